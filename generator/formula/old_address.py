"""An address that a page had before, as the maker writes it under `was`."""

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span

_SEGMENT = re.compile(r"[\w~][\w.~-]*")
_PAGE = (".html", ".htm")
_HINT = "Write what follows the address of your site, such as “recipes/old-name/” or “2019/honey-bread.html”."
# Device names that Windows keeps whatever the extension (Microsoft, "Naming Files, Paths, and Namespaces").
_DEVICE = re.compile(r"(?:con|prn|aux|nul|com[1-9]|lpt[1-9])(?:\..*)?", re.IGNORECASE)


@dataclass(frozen=True, slots=True, kw_only=True)
class OldAddress:
    """`path` leads from the root of the site, to a folder ("bread/plum/") or a page ("bread/plum.html")."""

    path: str
    span: Span


def read_old_address(text: str) -> tuple[str, str]:
    """The path, and "", or "" and why no page can stand there."""
    if ":" in text or text.startswith("//"):
        return "", "an old address is written without “https:” and without the name of the site"
    if "?" in text or "#" in text:
        return "", "a page cannot stand at an address with “?” or “#”"
    segments = text.strip("/").split("/")
    if segments[-1].casefold() in ("index.html", "index.htm"):
        segments = segments[:-1]
    for segment in segments:
        if not _SEGMENT.fullmatch(segment) or segment.endswith(".") or _DEVICE.fullmatch(segment):
            return "", f"“{segment}” cannot be a part of an address"
    if not segments:
        return "", "this is the address of the home page"
    *folders, last = segments
    ending = last[last.rfind(".") :].casefold() if "." in last else ""
    if any(each.casefold().endswith(_PAGE) for each in folders):
        return "", "nothing can stand below a page"
    if ending and ending not in _PAGE:
        return "", f"a host would not show a page at an address that ends in “{ending}”"
    return "/".join(segments) + ("" if ending else "/"), ""


def unusable(span: Span, why: str) -> Diagnostic:
    return Diagnostic(code="S074", message=why, span=span, hint=_HINT)


def taken_addresses(
    wanted: Iterable[OldAddress], taken: Mapping[str, str], *, kept: Iterable[str]
) -> Iterator[Diagnostic]:
    """An error for each old address where something stands already.

    `taken` says by its path, folded, what stands there; `kept` are folders of the site that hold its own files.
    """
    known, folders = dict(taken), tuple(kept)
    for each in wanted:
        folded = each.path.casefold()
        owner = known.get(folded)
        if owner is None and folded.startswith(folders):
            owner = "a folder that the site keeps for its own files"
        if owner is not None:
            message = f"“{each.path}” cannot be an old address: there stands {owner}"
            hint = "Delete it here, or give what stands there another name."
            yield Diagnostic(code="S075", message=message, span=each.span, hint=hint)
            continue
        line = f"another old address, {each.span.path} line {each.span.line}"
        known[folded] = line
