"""An EPUB as a file: a ZIP archive with its parts in a fixed order.

Nothing is deflated: what a deflater writes differs between its versions, and the same book must be the same bytes
everywhere. (EPUB 3.3, section 4.2: the first part is `mimetype`, stored as it is.)
"""

import zipfile
from collections.abc import Iterable
from io import BytesIO

# The earliest moment that a ZIP archive can tell.
_EPOCH = (1980, 1, 1, 0, 0, 0)
_CONTAINER = """\
<?xml version="1.0" encoding="utf-8"?>
<container version="1.0" xmlns="urn:oasis:names:tc:opendocument:xmlns:container">
<rootfiles><rootfile full-path="book/package.opf" media-type="application/oebps-package+xml"/></rootfiles>
</container>
"""


def packed(parts: Iterable[tuple[str, bytes]]) -> bytes:
    """The archive of these parts of the folder `book`, by name, in their order."""
    written = BytesIO()
    with zipfile.ZipFile(written, "w", zipfile.ZIP_STORED) as archive:
        _add(archive, "mimetype", b"application/epub+zip")
        _add(archive, "META-INF/container.xml", _CONTAINER.encode())
        for name, content in parts:
            _add(archive, f"book/{name}", content)
    return written.getvalue()


def _add(archive: zipfile.ZipFile, name: str, content: bytes) -> None:
    part = zipfile.ZipInfo(name, date_time=_EPOCH)
    # The same system and rights, wherever it is packed.
    part.create_system = 3
    part.external_attr = 0o644 << 16
    archive.writestr(part, content)
