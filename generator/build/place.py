"""Whether a folder may be written into at all, decided before any work is done."""

from pathlib import Path

from generator.build import manifest, swap

CONTENT_FOLDERS = ("recipes", "journal", "standing", "bakes", "media", "private")


def why_unusable(root: Path, *, content: Path | None = None) -> str:
    """A sentence for the maker that says why `root` cannot be the output folder; empty where it can.

    A folder that holds files and no manifest of ours belongs to somebody: it is left alone.
    """
    if root.is_symlink():
        return f"{root} is a link to another place; name the folder itself"
    if not root.exists():
        return _overlap(root, content)
    if not root.is_dir():
        return f"{root} is a file, not a folder"
    return _overlap(root, content) or _stranger(root)


def _overlap(root: Path, content: Path | None) -> str:
    if content is None:
        return ""
    output, source = root.resolve(), content.resolve()
    if output == source or output in source.parents:
        return f"{root} holds your content; the output needs a folder of its own"
    ours = [source / name for name in CONTENT_FOLDERS]
    if any(each == output or each in output.parents for each in ours):
        return f"{root} lies among your content; the output needs a folder of its own"
    return ""


def _stranger(root: Path) -> str:
    if swap.is_staging_strange(root):
        return f"{root / swap.STAGING} is not a folder of ours; remove it first"
    if manifest.read_manifest(root / manifest.NAME) is not None or swap.is_half_done(root):
        return ""
    if (root / manifest.NAME).exists():
        return f"{root / manifest.NAME} cannot be read, so it is not known which files may be replaced"
    if any(not each.name.startswith(".") for each in root.iterdir()):
        return f"{root} holds files that this command did not write; choose an empty folder"
    return ""
