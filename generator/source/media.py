"""Photographs that the files name: they must be there, inside the content folder, and described."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from generator.diagnostics.diagnostic import Diagnostic, did_you_mean
from generator.diagnostics.span import Span


@dataclass(frozen=True, slots=True, kw_only=True)
class NamedPhoto:
    """A photograph under `photo:`, the words for those who cannot see it, and its place; its focal point in percent
    from the left and the top, and the place of that."""

    source: str
    text: str
    span: Span
    focus: tuple[int, int] | None = None
    focus_span: Span | None = None


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


def focus_of(source: str, photos: Iterable[NamedPhoto]) -> tuple[int, int] | None:
    """The focal point of a photograph: it is cut once, however many pages show it."""
    return next((each.focus for each in photos if each.source == source and each.focus), None)


def focus_faults(photos: Iterable[NamedPhoto]) -> Iterator[Diagnostic]:
    """An error for each focal point that is not the one that was stated first for the same photograph."""
    first: dict[str, tuple[int, int]] = {}
    for photo in photos:
        if photo.focus is None or first.setdefault(photo.source, photo.focus) == photo.focus:
            continue
        stated = first[photo.source]
        message = f"“{photo.source}” has another focal point elsewhere: {stated[0]}% {stated[1]}%"
        hint = "A photograph is cut in one way for all pages: state the same for both, or leave one out."
        span = photo.focus_span or photo.span
        yield Diagnostic(code="S084", message=message, span=span, hint=hint)


def unreadable_photo(photo: NamedPhoto) -> Diagnostic:
    """What is said of a file that is no picture."""
    hint = "Save it as JPEG or PNG; a phone's HEIC must be exported first."
    message = f"“{photo.source}” is no picture that can be read"
    return Diagnostic(code="S081", message=message, span=photo.span, hint=hint)
