"""The text record of a drawn JPEG, read from its comment (ITU-T T.81, B.2.4.5)."""

import hashlib
import struct

from generator.proof.png_reader import PictureRecord

_START, _COMMENT = b"\xff\xd8", b"\xff\xfe"


def read_jpeg(content: bytes) -> PictureRecord:
    """ValueError: not a whole JPEG."""
    if not content.startswith(_START) or not content.endswith(b"\xff\xd9"):
        raise ValueError("not a whole JPEG file")
    if content[2:4] != _COMMENT:
        return PictureRecord(drawn=None, is_own=False)
    (length,) = struct.unpack(">H", content[4:6])
    words, _, mark = content[6 : 4 + length].decode("utf-8").rpartition("\n")
    if not mark.startswith("sha256 "):
        return PictureRecord(drawn=None, is_own=False)
    bare = content[:2] + content[4 + length :]
    return PictureRecord(drawn=words, is_own=mark == f"sha256 {hashlib.sha256(bare).hexdigest()}")
