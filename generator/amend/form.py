"""The usual fields of a recipe as a form: each is one text of the front matter, replaced where it stands."""

from collections.abc import Mapping

from generator.source.document import Text
from generator.source.edits import Edit, Scalar, is_flow, retyped, with_key
from generator.source.lines import Places
from generator.source.quoting import quoted
from generator.source.read import read_document
from generator.source.write import replace_spans

FIELDS = ("title", "lead", "published", "makes", "portions", "tin", "photo", "photo_text", "keeps")


def fields_of(path: str, data: bytes) -> dict[str, str]:
    """What the file says in each field that a form can change: one that is no plain text is left out."""
    document, _ = read_document(path, data, "recipe")
    if document is None:
        return {}
    values = {key: document.front.get(key) for key in FIELDS}
    return {
        key: node.value if isinstance(node, Text) else ""
        for key, node in values.items()
        if node is None or isinstance(node, Text)
    }


def with_fields(path: str, data: bytes, wanted: Mapping[str, str]) -> bytes | None:
    """The file with these fields, every other byte kept; None where that cannot be done for certain."""
    document, _ = read_document(path, data, "recipe")
    if document is None or document.text.encode() != data:
        return None
    places, old = Places(path, document.text), fields_of(path, data)
    edits: list[Edit] = []
    for key, value in wanted.items():
        words = " ".join(value.split())
        if key not in old or words == " ".join(old[key].split()):
            continue
        node = document.front.get(key)
        if isinstance(node, Text) and node.value.strip():
            flow = is_flow(document.front, places)
            edits.append(retyped(Scalar(text=node, flow=flow), words))
        elif node is None:
            edits += with_key(document.front, key, quoted(words), places, column=1)
        else:
            return None
    try:
        after = _joined(document.text, edits)
    except ValueError:
        return None
    said = fields_of(path, after.encode())
    meant = {**old, **{key: " ".join(value.split()) for key, value in wanted.items() if key in old}}
    same = {key: " ".join(each.split()) for key, each in said.items()} == {
        key: " ".join(each.split()) for key, each in meant.items()
    }
    return after.encode() if same else None


def _joined(text: str, edits: list[Edit]) -> str:
    """Several new keys go to one place, in their order."""
    together: dict[object, Edit] = {}
    for span, words in edits:
        together[span] = (span, together[span][1] + words if span in together else words)
    return replace_spans(text, together.values())
