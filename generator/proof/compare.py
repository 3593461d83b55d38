"""Holds one text against its claims: what is missing or said otherwise, and which figures nothing explains."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.diagnostics.diagnostic import Diagnostic
from generator.proof.built_text import BuiltText
from generator.proof.chain import Place, next_place, places_of
from generator.proof.claim import AMOUNT, DECLARATION, Claim
from generator.proof.context import Sayings
from generator.proof.difference import Difference, difference
from generator.proof.figures import Figure, figure_places
from generator.proof.squeeze import find

_CODES = {AMOUNT: "A002", DECLARATION: "A003"}
_SHOWN = 90
_AROUND = 36
# The strings of one row are not further apart than this, in letters.
_COMPANY = 90


@dataclass(frozen=True, slots=True, kw_only=True)
class Absent:
    """A claim that the text does not make, and the stretch of its letters where it belongs."""

    claim: Claim
    start: int
    end: int


def compare(
    text: BuiltText, claims: Sequence[Claim], sayings: Sequence[Sayings] = (), *, remedy: str
) -> tuple[Diagnostic, ...]:
    """All that is wrong with a text. `remedy` is what to type."""
    if agrees(text, claims, sayings):
        return ()
    reading = _Reading(text)
    found = [reading.tell(each, remedy) for each in reading.look_for(claims)]
    found += [reading.tell_figure(each, remedy) for each in reading.unexplained(sayings)]
    return tuple(found)


def agrees(text: BuiltText, claims: Sequence[Claim], sayings: Sequence[Sayings] = ()) -> bool:
    """Whether there is a way to read a text by which nothing is wrong with it, as far as that is quickly seen."""
    reading = _Reading(text)
    return reading.has_all(claims) and next(reading.unexplained(sayings), None) is None


def missing(text: BuiltText, claims: Sequence[Claim], *, remedy: str) -> tuple[Diagnostic, ...]:
    """What a text ought to say and does not; for a text that has figures of other things too."""
    reading = _Reading(text)
    if reading.has_all(claims):
        return ()
    reading = _Reading(text)
    return tuple(reading.tell(each, remedy) for each in reading.look_for(claims))


def absent(text: BuiltText, claims: Sequence[Claim]) -> tuple[Claim, ...]:
    """The claims that the text does not make."""
    return tuple(each.claim for each in _Reading(text).look_for(claims))


class _Reading:
    """A text while it is read: which of its letters are explained so far."""

    def __init__(self, text: BuiltText) -> None:
        self.text = text
        self.squeezed = text.squeezed
        self.explained = bytearray(len(self.squeezed.letters))

    def has_all(self, claims: Sequence[Claim]) -> bool:
        """Marks the claims as explained where they all are there, each in the first wording that comes next."""
        at = 0
        for each in claims:
            if each.loose:
                if not self._mark_everywhere(each) and each.needed:
                    return False
                continue
            place = next_place(self.squeezed, each, at)
            if place is None:
                return False
            at = place.end
            self._explain(place.start, at)
        return True

    def look_for(self, claims: Sequence[Claim]) -> list[Absent]:
        """Marks what is found as explained; what is not comes back."""
        ordered = [each for each in claims if not each.loose]
        places = places_of(self.squeezed, ordered)
        for place in places:
            self._explain(place.start, place.end)
        missing = list(self._between(ordered, places))
        for each in (each for each in claims if each.loose):
            if not self._mark_everywhere(each) and each.needed:
                missing.append(Absent(claim=each, start=0, end=len(self.squeezed.letters)))
        return missing

    def _between(self, claims: Sequence[Claim], places: Sequence[Place]) -> Iterator[Absent]:
        """The claims without a place, with the gap between their neighbours."""
        by_claim = {place.claim: place for place in places}
        start = 0
        for number, claim in enumerate(claims):
            if number in by_claim:
                start = by_claim[number].end
                continue
            after = (by_claim[each].start for each in range(number + 1, len(claims)) if each in by_claim)
            yield Absent(claim=claim, start=start, end=next(after, len(self.squeezed.letters)))

    def _mark_everywhere(self, claim: Claim) -> bool:
        found = False
        for letters in claim.each_spelling():
            at = find(self.squeezed, letters)
            while at >= 0:
                found = True
                self._explain(at, at + len(letters))
                at = find(self.squeezed, letters, at + len(letters))
        return found

    def _explain(self, start: int, end: int) -> None:
        self.explained[start:end] = b"\1" * (end - start)

    def tell(self, missing: Absent, remedy: str) -> Diagnostic:
        """A finding for a claim that is not made, with what stands there instead where something does."""
        claim = missing.claim
        change = self._said_instead(missing)
        code = _CODES.get(claim.kind, "A004")
        if change is None:
            start = self.squeezed.place(missing.start)
            where = _in(self.text.where(start))
            message = f"{claim.what} is not there{where}: the recipe says {quoted(claim.says)}"
            span = self.text.span(start, start + 1)
        else:
            where = _in(self.text.where(change.start))
            message = f"{claim.what}{where}: it leaves out {quoted(change.meant)}"
            if change.said:
                message = (
                    f"{claim.what}{where}: it says {quoted(change.said)}, the recipe {quoted(change.meant)}"
                )
            span = self.text.span(change.start, change.end)
            first, last = (self.squeezed.letter(each) for each in (change.start, change.end))
            self._explain(first, last)
        return Diagnostic(code=code, message=message, span=span, hint=remedy)

    def _said_instead(self, missing: Absent) -> Difference | None:
        start, end = self.squeezed.place(missing.start), self.squeezed.place(missing.end)
        best: Difference | None = None
        wordings = missing.claim.ways
        tries = ((way, *each) for way in wordings for each in self._stretches(start, end, len(way)))
        for way, offset, said in tries:
            change = difference(said, offset, way)
            if change and (best is None or (change.size, -change.same) < (best.size, -best.same)):
                best = change
        return best or self._all_of(start, end, missing.claim)

    def _all_of(self, start: int, end: int, claim: Claim) -> Difference | None:
        """What stands between the neighbours of a claim, where it is little enough to be said instead of it."""
        said = self.text.words[start:end].strip()
        if claim.loose or not said or len(said) > 2 * len(claim.says) + 10:
            return None
        start = self.text.words.index(said, start)
        size = len(claim.says)
        return Difference(said=said, meant=claim.says, start=start, end=start + len(said), size=size, same=0)

    def _stretches(self, start: int, end: int, length: int) -> Iterator[tuple[int, str]]:
        """The lines of a stretch, each with those after it that may belong to it."""
        words = self.text.words
        at = words.rfind("\n", 0, start) + 1
        if start > at:
            at = start
        while at < end:
            yield at, words[at : min(end, at + length + length // 2 + 40)]
            line = words.find("\n", at, end)
            if line < 0:
                return
            at = line + 1

    def unexplained(self, sayings: Sequence[Sayings]) -> Iterator[Figure]:
        """The figures that neither a claim nor a string of the recipe has in this place."""
        for start, end in figure_places(self.text.words):
            first, last = self.squeezed.letter(start), self.squeezed.letter(end)
            if 0 not in self.explained[first:last]:
                continue
            figure = Figure(words=self.text.words[start:end], start=start, end=end)
            ways = (self._has_context, self._has_company)
            if not any(way(figure, first, last, each) for way in ways for each in sayings):
                yield figure

    def _has_context(self, figure: Figure, first: int, last: int, sayings: Sayings) -> bool:
        letters = self.squeezed.letters
        return any(
            letters.endswith(each.before, 0, first) and letters.startswith(each.after, last)
            for each in sayings.contexts(figure.words)
        )

    def _has_company(self, figure: Figure, first: int, last: int, sayings: Sayings) -> bool:
        """Whether the whole string stands here, and near it all others that it belongs together with."""
        letters = self.squeezed.letters
        for each in sayings.companies(figure.words):
            size = len(each.words)
            start = letters.find(each.words, max(0, last - size), max(first + size, last))
            # A gas mark is told with the word before it, and kept without.
            if start < 0 or (start > first and start + size != last):
                continue
            near = letters[max(0, start - _COMPANY) : start + size + _COMPANY]
            if all(other in near for other in each.others):
                return True
        return False

    def tell_figure(self, figure: Figure, remedy: str) -> Diagnostic:
        words = self.text.words
        around = words[max(0, figure.start - _AROUND) : figure.end + _AROUND]
        shown = " ".join(around.split())
        where = _in(self.text.where(figure.start))
        told = " ".join(figure.words.split())
        message = f"{quoted(told)} is no amount, temperature or time of the recipe{where}: {quoted(shown)}"
        return Diagnostic(
            code="A001", message=message, span=self.text.span(figure.start, figure.end), hint=remedy
        )


def _in(where: str) -> str:
    return f" {where}" if where else ""


def quoted(words: str) -> str:
    """In quotation marks, and not longer than a message bears."""
    shown = " ".join(words.split())
    return f"“{shown}”" if len(shown) <= _SHOWN else f"“{shown[: _SHOWN - 1].rstrip()}…”"
