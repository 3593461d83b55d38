"""An address as a QR code (ISO/IEC 18004), drawn as lines of an inline SVG so that print stays sharp."""

from dataclasses import dataclass
from io import StringIO

import segno
from markupsafe import Markup

# The quiet zone that ISO/IEC 18004 asks for, in modules on each side.
QUIET = 4
# A module narrower than this is lost by some home printers and phone cameras (common practice).
SMALLEST_MODULE_MM = 0.35


@dataclass(frozen=True, slots=True, kw_only=True)
class QrCode:
    """`svg` fills its box and carries its own title; `modules` counts one side, quiet zone included."""

    svg: Markup
    modules: int

    def side_mm(self, module_mm: float) -> float:
        """The side of the printed square at a module of this size, never finer than a reader needs."""
        return round(self.modules * max(module_mm, SMALLEST_MODULE_MM), 2)


def qr_code(address: str, *, title: str) -> QrCode:
    """The smallest code for an address, correction level M. `title` is what a screen reader says of it."""
    code = segno.make(address, error="m", micro=False, boost_error=True)
    modules = int(code.symbol_size(border=QUIET)[0])
    drawn = code.svg_inline(border=QUIET, omitsize=True, svgclass=None, lineclass=None, title=title)
    return QrCode(svg=Markup(drawn), modules=modules)


def terminal_code(address: str) -> str:
    """The code in half blocks for a terminal, dark on light and light on dark alike."""
    written = StringIO()
    segno.make(address, error="l", micro=False).terminal(out=written, border=2, compact=True)
    return written.getvalue().rstrip("\n")
