"""The built files read back and held against the recipes.

In: the bytes of finished files by their path (`prove.prove`), or an output folder (`folder.prove_folder`), and
what the pipeline understood (`expected.Expected`). Out: `Diagnostic`s that name a built file, what it says and
what the recipe says. Every format has a reader of its own here, which knows nothing of the renderers.
"""
