"""Photographs that the files name: they must be there, inside the content folder, and described."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.diagnostics.span import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedPhoto:
    """A photograph under `photo:`, the words for those who cannot see it, and its place."""

    source: str
    text: str
    span: Span


def photo_faults(photos: Iterable[NamedPhoto], media: tuple[str, ...]) -> Iterator[Diagnostic]:
    """An error for each that is not in `media/`, a warning for each that nobody has described."""
    for photo in photos:
        if photo.source not in media:
            hint = did_you_mean(photo.source, media) or "Put the file into media/ and write “media/NAME.jpg”."
            message = f"there is no photograph “{photo.source}”"
            yield Diagnostic(code="S080", message=message, span=photo.span, hint=hint)
        elif not photo.text:
            hint = "Add “photo_text:” and say what the picture shows, for readers who cannot see it."
            message = "this photograph has no description"
            yield Diagnostic(code="S082", message=message, span=photo.span, hint=hint)


def unreadable_photo(photo: NamedPhoto) -> Diagnostic:
    """What is said of a file that is no picture."""
    hint = "Save it as JPEG or PNG; a phone's HEIC must be exported first."
    message = f"“{photo.source}” is no picture that can be read"
    return Diagnostic(code="S081", message=message, span=photo.span, hint=hint)
