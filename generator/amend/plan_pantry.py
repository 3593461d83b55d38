"""A correction of the pantry, worked out whole, with the revisions of every recipe that it changes."""

from generator.amend.answer import Asked, Refused, Worked
from generator.amend.numbering import Reason
from generator.amend.pantry_facts import correct_pantry, words_of
from generator.amend.plan import Plan, lies_ahead, mistakes_made, new_warnings, planned
from generator.amend.standing import PANTRY, Standing
from generator.catalogue.lookup import fold
from generator.source.document import Mapping, Node
from generator.source.read import read_mapping
from generator.source.write import replace_spans

_ODD = "Write it in the file, and record it: tinleaf correct --pantry --as-it-stands --why “…”."


def plan_pantry(standing: Standing, asked: Asked, *, prefix: str = "") -> Plan | Refused:
    """The correction of one fact of the pantry, and the revisions of every recipe that it changes."""
    data = standing.files.get(PANTRY)
    pantry = read_mapping(PANTRY, data)[0] if data is not None else None
    wrong = lies_ahead(standing, asked.on)
    if data is None or pantry is None or wrong is not None:
        return wrong or Refused(
            message=f"there is no {PANTRY} to correct", hint="Write the row into a new one."
        )
    worked = correct_pantry(pantry, data.decode(), asked)
    if isinstance(worked, Refused):
        return worked
    try:
        text = replace_spans(data.decode(), worked.edits)
    except ValueError:
        return Refused(message=f"{PANTRY} cannot be changed for certain", hint=_ODD)
    changed = {PANTRY: text.encode()}
    after = standing.with_files(changed)
    refused = mistakes_made(standing, after) or _pantry_astray(pantry, text, asked, worked)
    if refused is not None:
        return refused
    reason = Reason(recipe="", cause="pantry", what=worked.change, why=asked.why, on=asked.on)
    return planned(standing, after, changed, reason, found=new_warnings(standing, after), prefix=prefix)


def _pantry_astray(pantry: Mapping, text: str, asked: Asked, worked: Worked) -> Refused | None:
    """Whether the pantry reads back as anything else than it did, with the one new value."""
    now = read_mapping(PANTRY, text.encode())[0]
    refused = Refused(message=f"{PANTRY} cannot be changed for certain", hint=_ODD)
    if now is None or now.keys() != pantry.keys():
        return refused
    key = asked.key.strip().casefold().replace(" ", "_")
    for (name, before), (_, after) in zip(pantry.entries, now.entries, strict=True):
        then, values = _said(before), _said(after)
        meant = {**then, key: worked.new} if fold(name.value) == fold(asked.what) else then
        if values != meant:
            return refused
    return None


def _said(row: Node) -> dict[str, str]:
    return {key.value: words_of(value) for key, value in row.entries} if isinstance(row, Mapping) else {}
