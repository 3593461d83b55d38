"""Foreign words made safe for a recipe file: plain text for Markdown, scalars for the front matter."""

import json
import re

_SIGNS = re.compile(r"([\\`*_\[\]<>{}~|]|&(?=[#\w]+;))")
_OPENING = re.compile(r"^(\s*)([#>+=-]|\d{1,9}[.)](?=\s|$))")
_CAUTION = re.compile(r"^(\s*)(caution)(\s*:)", re.I)
_PLAIN = re.compile(r"[^\W_][^\n\t\"\\]*")
_UNSAFE = re.compile(r":\s|:$|\s#|^(?:true|false|yes|no|on|off|null|~)$|\s$|^\s", re.I)


def escaped(text: str, *, opening: bool) -> str:
    """`text` so that Markdown prints it as it stands; `opening` where it begins a paragraph."""
    safe = _SIGNS.sub(r"\\\1", text)
    if opening:
        safe = _OPENING.sub(lambda f: f"{f[1]}{_harmless(f[2])}", safe)
    return safe


def _harmless(sign: str) -> str:
    return f"\\{sign}" if len(sign) == 1 else f"{sign[:-1]}\\{sign[-1]}"


def scalar(text: str) -> str:
    """`text` as a YAML scalar of one line, in quotes only where it needs them."""
    one = " ".join(text.split())
    if _PLAIN.fullmatch(one) and not _UNSAFE.search(one):
        return one
    return json.dumps(one, ensure_ascii=False)


def comment(text: str) -> str:
    """`text` inside a comment of the front matter or, with the dashes taken apart, of the body."""
    return " ".join(text.split()).replace("--", "- -").replace(">", "›")
