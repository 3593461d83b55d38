"""The one table of codes. A code never changes its meaning; a retired one is never used again.

Letters: S a file and its front matter, P the pantry, F the formula, R references and method,
T times and temperatures, L labels, D the description, B building.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType


@dataclass(frozen=True, slots=True, kw_only=True)
class Code:
    """`title` says in a few words what the code stands for; `error` whether it stops a build."""

    title: str
    error: bool = True


def _warning(title: str) -> Code:
    return Code(title=title, error=False)


def _error(title: str) -> Code:
    return Code(title=title)


CODES: Mapping[str, Code] = MappingProxyType(
    {
        # S: files, front matter, settings
        "S001": _error("not UTF-8"),
        "S002": _error("a control character"),
        "S003": _error("too large"),
        "S004": _error("an empty file"),
        "S005": _error("no front matter"),
        "S006": _error("front matter without an end"),
        "S007": _error("empty front matter"),
        "S008": _error("not keys and values"),
        "S009": _error("indentation that is not made of spaces"),
        "S010": _error("a key given twice"),
        "S011": _error("an anchor or an alias"),
        "S012": _error("a merge key"),
        "S013": _error("a tag or a directive"),
        "S014": _error("several documents in one"),
        "S015": _error("nested too deep"),
        "S016": _error("a key that is not text"),
        "S017": _error("a quote never closed"),
        "S018": _error("no space after a colon"),
        "S019": _error("indentation that does not fit"),
        "S020": _error("a bracket never closed"),
        "S021": _error("text that needs quotes"),
        "S022": _error("front matter that cannot be read"),
        "S023": _error("a list on the line of its key"),
        "S024": _error("a line that runs on from the one above"),
        "S025": _warning("an invisible character"),
        "S026": _warning("text read as a comment"),
        "S030": _error("a brace never closed"),
        "S031": _error("a brace inside braces"),
        "S032": _error("empty braces"),
        "S033": _warning("a closing brace without an opening one"),
        "S040": _error("a way without a name"),
        "S041": _error("a way given twice"),
        "S042": _error("the common part before the ways"),
        "S043": _warning("a heading without a space"),
        "S044": _warning("a second title"),
        "S045": _warning("a caution inside a paragraph"),
        "S046": _warning("braces outside the method"),
        "S047": _warning("a heading that is nearly a method"),
        "S048": _warning("an empty heading"),
        "S050": _error("no such folder"),
        "S051": _error("a file name that cannot be an address"),
        "S052": _error("two names that are one on some disks"),
        "S053": _error("a name kept by the system or the site"),
        "S054": _error("a link that leaves the folder"),
        "S055": _error("a file that cannot be read"),
        "S056": _warning("a file that is passed over"),
        "S060": _error("an unknown key"),
        "S061": _error("a needed key is missing"),
        "S062": _error("the wrong shape of value"),
        "S063": _error("not a date"),
        "S064": _error("not a moment"),
        "S065": _error("neither yes nor no"),
        "S066": _error("not a whole number"),
        "S067": _error("not a percentage"),
        "S068": _error("not one of the choices"),
        "S069": _error("not an address"),
        "S070": _error("not the address of a site"),
        "S071": _error("an unknown time zone"),
        "S072": _error("not a language tag"),
        "S073": _error("no settings"),
        "S080": _error("a photograph that is not there"),
        "S081": _error("a photograph that cannot be read"),
        "S082": _warning("a photograph without a description"),
        # P: pantry
        "P001": _error("a comma in a pantry name"),
        "P002": _error("a pantry row that is not keys and values"),
        "P003": _error("stands in for an ingredient that the catalogue does not know"),
        "P004": _error("a catalogue name that stands in for another"),
        "P005": _error("an unknown allergen"),
        "P006": _error("not a weight"),
        "P007": _error("two rows for one ingredient"),
        "P008": _error("flour settled by the catalogue"),
        "P009": _error("not grams in 100 g"),
        "P010": _warning("a pack that has not been read"),
        # F: formula and ingredient lines
        "F002": _error("a line without an ingredient"),
        "F004": _error("an amount of nothing"),
        "F005": _warning("a fraction that can be read in two ways"),
        "F006": _error("a bracket never closed"),
        "F010": _error("lines that are no list"),
        "F011": _error("no formula"),
        "F012": _error("a part without a plain name"),
        "F013": _error("a part without ingredients"),
        "F014": _warning("an unknown kind of preferment"),
        "F015": _error("not an ingredient line"),
        "F016": _error("an entry without keys"),
        "F017": _error("two parts of one name"),
        "F020": _error("the finished weight given twice"),
        "F021": _error("not a weight"),
        "F022": _error("a loss that cannot be"),
        "F030": _error("measures of one line that disagree"),
        "F031": _error("a volume that cannot be weighed"),
        "F032": _warning("a piece of unknown weight"),
        "F033": _warning("an ingredient without an amount"),
        "F034": _warning("a vague measure"),
        "F035": _warning("ounces of a liquid"),
        "F036": _warning("a pack size that may be meant for each"),
        "F040": _error("an unknown recipe"),
        "F041": _error("bought and made at once"),
        "F042": _error("an unknown pantry row"),
        "F043": _error("an unknown ingredient"),
        "F044": _error("an unclear discard"),
        "F045": _error("more discarded than there is"),
        "F046": _error("a recipe made of itself"),
        "F047": _warning("a component without a weight"),
        "F048": _error("a component that weighs nothing"),
        "F049": _warning("a component whose batch was never weighed"),
        # R: references and method
        "R001": _warning("no method"),
        "R010": _error("a reference to nothing"),
        "R011": _error("a reference to more than one line"),
        "R012": _error("not a share"),
        "R013": _error("an extra of something unknown"),
        "R020": _error("an ingredient used twice"),
        "R021": _error("shares of more than the whole"),
        "R022": _error("a share in another kind of measure"),
        "R023": _error("a rest of nothing"),
        "R024": _error("an ingredient never used"),
        "R025": _error("an ingredient not used up"),
        "R026": _error("ways that leave different amounts"),
        "R030": _warning("an amount outside braces"),
        "R031": _warning("a temperature outside braces"),
        "R032": _warning("an ingredient outside braces"),
        # T: times and temperatures
        "T001": _error("a stage without a time"),
        "T002": _error("a heat without a temperature"),
        "T003": _warning("a temperature out of reach"),
        "T010": _error("not a time of a film"),
        "T011": _error("not chapters"),
        "T012": _warning("chapters out of order"),
        "T013": _warning("chapters that a film's page passes over"),
        # L: labels
        "L001": _warning("a pack to read before the label is finished"),
        "L002": _warning("a pack never read on a stated day"),
        "L003": _warning("a pack read too long ago"),
        "L004": _warning("an ingredient whose packs often add an allergen"),
        "L005": _warning("a claim of absence"),
        "L006": _error("something handled in the kitchen that is no allergen known here"),
        "L007": _error("a caution set aside that there is not"),
        # D: description
        "D001": _warning("a block under the video that is too long"),
        # B: building
        "B001": _error("a character that cannot be printed"),
    }
)
