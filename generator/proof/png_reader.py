"""The text record of a picture, read from its chunks (PNG, W3C Recommendation 2003, sections 5 and 11.3.4)."""

import hashlib
import struct
import zlib
from collections.abc import Iterator
from dataclasses import dataclass

_SIGNATURE = b"\x89PNG\r\n\x1a\n"


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureRecord:
    """`drawn` is what the picture shows by its record, None without one; `is_own` that it is of these pixels."""

    drawn: str | None
    is_own: bool


def read_png(content: bytes) -> PictureRecord:
    """ValueError: not a whole PNG."""
    drawn, mark, pixels = None, "", hashlib.sha256()
    for kind, data in _chunks(content):
        if kind == b"iTXt" and data.startswith(b"Description\0"):
            drawn = _international(data)
        elif kind == b"tEXt" and data.startswith(b"Pixels\0"):
            mark = data.partition(b"\0")[2].decode("latin-1")
        elif kind == b"IDAT":
            pixels.update(data)
    return PictureRecord(drawn=drawn, is_own=mark == f"sha256 {pixels.hexdigest()}")


def _chunks(content: bytes) -> Iterator[tuple[bytes, bytes]]:
    if not content.startswith(_SIGNATURE):
        raise ValueError("not a PNG file")
    at = len(_SIGNATURE)
    while at < len(content):
        if at + 12 > len(content):
            raise ValueError("cut off")
        length, kind = struct.unpack(">I4s", content[at : at + 8])
        data = content[at + 8 : at + 8 + length]
        end = content[at + 8 + length : at + 12 + length]
        if len(end) < 4 or struct.unpack(">I", end)[0] != zlib.crc32(kind + data):
            raise ValueError("damaged")
        yield kind, data
        if kind == b"IEND":
            return
        at += 12 + length
    raise ValueError("cut off")


def _international(data: bytes) -> str:
    """The text of an iTXt chunk: keyword, compression flag and method, language, translated keyword, text."""
    _, _, rest = data.partition(b"\0")
    packed, rest = rest[:1] == b"\1", rest[2:]
    _, _, rest = rest.partition(b"\0")
    _, _, text = rest.partition(b"\0")
    return (zlib.decompress(text) if packed else text).decode("utf-8")
