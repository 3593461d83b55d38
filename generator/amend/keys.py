"""The single facts of a recipe's front matter: what it makes, weighs and keeps, its tin, its loss in the oven."""

from generator.amend.answer import Asked, Former, Refused, Worked
from generator.source.document import Document, Text
from generator.source.edits import Scalar, is_flow, retyped
from generator.source.lines import Places

KEYS = ("makes", "portions", "tin", "weighs", "bakes_off", "keeps", "flour", "dough")
_LONGEST = 200


def is_key(what: str) -> bool:
    return _plain(what) in KEYS


def correct_key(document: Document, asked: Asked) -> Worked | Refused:
    """The value of one key anew."""
    key, new = _plain(asked.what), " ".join(asked.new.split())
    node = document.front.get(key)
    if not isinstance(node, Text) or not node.value.strip():
        return Refused(
            message=f"{document.path} has no “{key}:” that could be corrected",
            hint=f"Add “{key}: {new[:40]}” to the file, and record it with --as-it-stands.",
        )
    old = " ".join(node.value.split())
    if not new or len(new) > _LONGEST or not new.isprintable():
        return Refused(message=f"this is no value for “{key}”", hint="Type one line of text.")
    if asked.old and " ".join(asked.old.split()) != old:
        return Refused(message=f"“{key}” is not “{asked.old}” but “{old}”", hint="Look at the file.")
    if new == old:
        return Refused(message=f"“{key}” is “{old}” already", hint="Nothing was changed.")
    places = Places(document.path, document.text)
    scalar = Scalar(text=node, flow=is_flow(document.front, places))
    return Worked(edits=(retyped(scalar, new),), what=key, old=old, new=new, former=(Former(words=old),))


def _plain(what: str) -> str:
    return "_".join(what.strip().casefold().split()).replace("-", "_")
