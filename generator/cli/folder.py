"""Which folder a command works on, and how its files are named to the person who typed the command."""

import os
from pathlib import Path

SETTINGS = "site.yaml"
USUAL = "content"


def content_folder(given: Path | None, *, here: Path) -> Path | str:
    """The content folder: the one given, else `here` if it is one, else `content/` in it.

    A sentence instead, where there is none. Whether a given folder holds good content is for `check` to say.
    """
    if given is not None:
        return given if given.is_dir() else f"there is no folder {given}"
    if (here / SETTINGS).exists():
        return Path()
    if (here / USUAL).is_dir():
        return Path(USUAL)
    return (
        f"this folder has no {SETTINGS} and no {USUAL}/ in it; go to your content folder, name it with "
        "--content DIR, or lay a new one with `tinleaf start DIR`"
    )


def output_folder(content: Path, given: Path | None) -> Path:
    """The output folder: the one given, else `output/` beside the content folder."""
    if given is not None:
        return given
    beside = content.resolve().parent / "output"
    return beside if content.is_absolute() else Path(os.path.relpath(beside))


def write_for_maker(content: Path, place: str, data: bytes, *, wish: Path | None) -> Path | None:
    """Writes one file that a command made: to `wish`, else to `place` in the output folder beside the content.

    Where it stands then; None where that cannot be, which is told.
    """
    from generator.build.beside import write_beside, write_file
    from generator.cli.terminal import say
    from generator.render.output import Product

    if wish is not None:
        path, reason = wish, write_file(wish, data)
    else:
        root = output_folder(content, None)
        path, reason = root / place, write_beside(root, Product(path=place, content=data), content=content)
    if reason:
        say(reason)
        return None
    return path


def finish_earlier(content: Path) -> bool:
    """Finishes what a command that was cut off left half written; false where that cannot be done, which is told."""
    from generator.source.pending import NAME, UNFINISHED

    if not ((content / NAME).exists() or (content / UNFINISHED).exists()):
        return True
    from generator.cli.findings import show_findings
    from generator.diagnostics.diagnostic import has_errors
    from generator.source.write import recover

    found = recover(content)
    show_findings(found, {}, content=content)
    return not has_errors(found)


def prefix_of(content: Path) -> str:
    """What to put before a path inside the content folder so that it can be opened from here."""
    return "" if content == Path() else f"{content.as_posix()}/"
