"""What an output would lose in silence: letters that no font has, sections of a text that is too long."""

import unicodedata
from collections.abc import Iterator, Mapping

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import first_place
from generator.present.recipe import Setting
from generator.present.views import RecipeView
from generator.render.description.plain import size
from generator.render.description.render import render_description
from generator.render.description.short import render_short
from generator.render.print_fonts import unprintable


def lost_in(setting: Setting, views: Mapping[str, RecipeView], texts: Mapping[str, str]) -> Diagnostics:
    """Both for these recipes."""
    return (*shortened_descriptions(setting, views), *unprintable_letters(setting, views, texts))


def unprintable_letters(
    setting: Setting, views: Mapping[str, RecipeView], texts: Mapping[str, str]
) -> Iterator[Diagnostic]:
    """An error for each character that no font of ours has: on paper it would be a silent gap."""
    for name, view in views.items():
        formula, missing = setting.book[name], unprintable(view)
        for character in dict.fromkeys(each.character for each in missing):
            span = first_place(formula.path, texts.get(formula.path, ""), character)
            called = unicodedata.name(character, "without a name")
            # What is not seen would also turn the message itself around.
            shown = f"“{character}” " if character.isprintable() else ""
            message = f"the character {shown}(U+{ord(character):04X} {called.lower()}) cannot be printed"
            hint = "Take it out, or write it in words: no font of the cards and tags has it."
            yield Diagnostic(code="B001", message=message, span=span, hint=hint)


def shortened_descriptions(setting: Setting, views: Mapping[str, RecipeView]) -> Diagnostics:
    """A warning for each block under a video that had to leave sections out."""
    found = []
    for name, view in views.items():
        described = render_description(view, limit=setting.settings.description_limit)
        if described.dropped:
            message = f"the block under the video is too long and leaves out: {', '.join(described.dropped)}"
            hint = "Shorten the steps or the links, or set a larger “description_limit:” in site.yaml."
            span = setting.book[name].spans["title"]
            found.append(Diagnostic(code="D001", message=message, span=span, hint=hint))
        short = render_short(view, limit=setting.settings.short_limit)
        if not short.fits:
            message = (
                f"the short text under the video has {size(short.text)} bytes, and its limit is "
                f"{setting.settings.short_limit}: cautions, allergens and the page's address always stay"
            )
            hint = "Set a larger “short_limit:” in site.yaml, or use the short text only where it fits."
            span = setting.book[name].spans["title"]
            found.append(Diagnostic(code="D002", message=message, span=span, hint=hint))
    return tuple(found)
