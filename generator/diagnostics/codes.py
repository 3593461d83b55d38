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
        # P: pantry
        # F: formula and ingredient lines
        # R: references and method
        # T: times and temperatures
        # L: labels
        # D: description
        # B: building
    }
)
