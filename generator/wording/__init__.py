"""The words that readers see, in the language of the publication.

In: English texts as the code holds them, `say("Bake for {time}", time=…)`, and in templates `_("…")`. Out: the same
in the language that is spoken: `with speaking("de"):`, or `speak("de")` for the rest of a command. English needs no
catalogue and no library. Any other language is one file, `catalogues/LANGUAGE.po` (gettext's open format), with
dates, plurals, lists and decimal marks from CLDR. In the file, sections begin with a line `# === NAME ===`; the words
of templates stand in the last one, each text once. What is not in it is said in English.
"""
