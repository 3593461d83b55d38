"""The content security policy of a page: everything from the site itself, and nothing else.

A host of static files may set no headers, so each page carries its policy in a meta element. What stands inside the
page itself (data for search engines and for our own scripts, the style of 404.html) is allowed by the SHA-256 of its
very text, as Content Security Policy Level 3 (W3C) has it; there is no 'unsafe-inline' and no other host.
"""

import re
from base64 import b64encode
from collections.abc import Iterable, Iterator
from hashlib import sha256

MARK = "content-policy"
"""Stands in a template where the policy belongs."""

_INLINE = re.compile(r"<(script|style)\b((?:(?!\ssrc=)[^>])*)>(.*?)</\1>", re.DOTALL)
_DRAWN_IN_THE_PAGE = re.compile(r'(?:href|src)="?data:')


def with_policy(html: str) -> str:
    """The finished page with its policy in the place of the mark."""
    return html.replace(MARK, policy_of(html), 1)


def policy_of(html: str) -> str:
    inline = [(found[1], found[3]) for found in _INLINE.finditer(html)]
    scripts, styles = (" ".join(["'self'", *_hashes(inline, kind)]) for kind in ("script", "style"))
    pictures = "'self' data:" if _DRAWN_IN_THE_PAGE.search(html) else "'self'"
    return (
        f"default-src 'none';script-src {scripts};style-src {styles};img-src {pictures};font-src 'self';"
        "connect-src 'self';base-uri 'none';form-action 'self'"
    )


def _hashes(inline: Iterable[tuple[str, str]], kind: str) -> Iterator[str]:
    for element, content in inline:
        if element == kind:
            yield f"'sha256-{b64encode(sha256(content.encode()).digest()).decode()}'"
