"""The title of a bake chosen by worth: what the form says, what the file is called, what the words are.

Menus, greetings, heads of mails and words such as “(front)” stand first in many texts and are no titles. Nothing is
lost by the choice: what is not taken stays in the notes.
"""

import re
from collections.abc import Iterator
from dataclasses import dataclass, replace

from generator.importer.line.tidy import SIGNS, one_line
from generator.importer.model import Confidence, Doubt, Placed
from generator.importer.places.facts import URL
from generator.importer.places.line_looks import POINTS, is_step
from generator.importer.places.words import MENU, SECTIONS, plain

_FIT, _CLEAR, _BETTER = 30, 15, 20
"""From so much on a title is not asked about; so far it must be from the next; so much better than the one found."""
_MOST_WORDS, _LONGEST, _FEW = 14, 120, 3
_ROLES = frozenset({"title", "lead", "intro", "note", "part", "section", "credit", "caution", "step"})
_TOP = 60
"""Lines over the list in which a title is looked for."""
_LABELLED = re.compile(
    r"^(?P<label>title|name|recipe(?:\sname)?|rezept|recette|receta|ricetta|recept|subject|betreff|objet)(?:[\s.·_]*[:=]\s*|\s*[.·_]{3,}\s*)(?P<rest>\S.*)$",
    re.I,
)
_AGAIN = re.compile(r"^(?:(?:re|fwd?|aw|wg|tr|rv)\s*:\s*)+", re.I)
_STAMP = re.compile(
    r"^\W*\d{1,4}[./-]\d{1,2}[./-]\d{2,4}\D{1,3}\d{1,2}(?:[:.]\d{2}){1,2}[^\]:]{0,6}\]?\s*[-–—]?\s*[^:]{1,30}:\s+"
)
_MARKED = re.compile(r"^(?P<sign>[*_=~#'\"“«+-]{1,3})\s?(?P<words>[^\W_].*?)\s?[*_=~#'\"”»+-]{1,3}$")
_MAKING = re.compile(
    r"\b(?:mak(?:e|ing)|bak(?:e|ing)|today|recipe|week|presents?)\b[^:]{0,30}[:–—]\s+(?P<rest>\S.*)$", re.I
)
_FIRST = re.compile(r"^(?P<words>[^.!?:]{4,70})[.!?:]\s+\S")
_FIELD = re.compile(
    r"^\s*(?:from|to|cc|date|sent|by|von|an|datum|author|source|posted)\b[^:]{0,20}[:.]", re.I
)
_BRACKETED = re.compile(r"^[(\[{<].*[)\]}>]$")
_DATED = re.compile(
    r"\d{1,2}[:.]\d{2}|\d{1,4}[./-]\d{1,2}[./-]\d{2,4}|\b(?:19|20)\d{2}\b"
    r"|\b(?:page|letter no|issue|vol|no)\b\.?\s*\d",
    re.I,
)
_TALK = re.compile(
    r"\b(?:hello|hi|hey|dear|dears|hallo|welcome|thanks?|thank|please|sorry|sure|moment|i|i'm|we|you|your|me|"
    r"forwarded|message|wrote|reply|quote|share|browser|letter|newsletter|below|above|here)\b",
    re.I,
)
_BAKES = re.compile(
    r"(?:bread|loaf|loaves|rolls?|buns?|braid|plait|cakes?|cookies?|biscuits?|tarts?|tartlets?|pies?|scones?|muffins?|"
    r"cupcakes?|crackers?|bagels?|pretzels?|brownies?|bars?|squares?|pizza|focaccia|flatbreads?|pancakes?|waffles?|"
    r"doughnuts?|donuts?|croissants?|pastry|pastries|rusks?|crumble|cobbler|cheesecake|gingerbread|sponge|wreath|twists?|"
    r"sticks|brot|br[oö]tchen|kuchen|torte|pain|g[aâ]teau|pan|torta|pane|brood|koek|taart|zopf|st[ou]llen|kekse)",
    re.I,
)
_WORD = re.compile(r"[^\W\d_]{3,}")
_COMMON = frozenset(
    ["the", "and", "with", "for", "recipe", "from", "our", "best", "easy", "txt", "fwd", "page"]
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Candidate:
    index: int
    words: str
    worth: int


def chosen(placed: tuple[Placed, ...], stem: str) -> tuple[tuple[Placed, ...], tuple[Doubt, ...]]:
    """The lines with the title that is worth most, and a doubt where no line is worth enough."""
    best_of: dict[str, _Candidate] = {}
    for each in _candidates(placed, stem):
        key = plain(each.words)
        if key not in best_of or each.worth > best_of[key].worth:
            best_of[key] = each
    ordered = sorted(best_of.values(), key=lambda each: (-each.worth, each.index))
    now = next((index for index, each in enumerate(placed) if each.role == "title"), None)
    if not ordered:
        return placed, ()
    best = ordered[0]
    if now is not None:
        own = max(
            (each.worth for each in ordered if each.index == now and each.words == _shown(placed[now])),
            default=-100,
        )
        if best.index == now and best.words == _shown(placed[now]):
            return _one_title(placed, now), _doubt(ordered, placed)
        if best.worth < own + _BETTER:
            return _one_title(placed, now), _doubt(
                [_Candidate(index=now, words=_shown(placed[now]), worth=own)], placed
            )
    if best.worth <= 0:
        return (placed, ()) if now is None else (_one_title(placed, now), _doubt(ordered, placed))
    return _with_title(placed, best, now), _doubt(ordered, placed)


def _shown(each: Placed) -> str:
    return one_line(each.value or each.line.text)


def _one_title(placed: tuple[Placed, ...], kept: int) -> tuple[Placed, ...]:
    """Whatever else was taken for a title is a note."""
    return tuple(
        replace(each, role="note", value=each.line.text) if each.role == "title" and index != kept else each
        for index, each in enumerate(placed)
    )


def _with_title(placed: tuple[Placed, ...], best: _Candidate, now: int | None) -> tuple[Placed, ...]:
    out: list[Placed] = []
    for index, each in enumerate(_one_title(placed, best.index)):
        if index != best.index:
            out.append(each)
            continue
        words = best.words.capitalize() if best.words.isupper() else best.words
        out.append(Placed(line=each.line, role="title", value=words, confidence=Confidence.LIKELY))
        if set(_WORD.findall(each.line.text.casefold())) - set(_WORD.findall(words.casefold())):
            role = each.role if each.role in ("lead", "intro", "step") else "note"
            out.append(
                replace(each, role=role, value=each.value or each.line.text) if role != "title" else each
            )
    return tuple(out)


def _doubt(ordered: list[_Candidate], placed: tuple[Placed, ...]) -> tuple[Doubt, ...]:
    best = ordered[0]
    near = [
        each
        for each in ordered[1:]
        if each.worth > best.worth - _CLEAR and each.worth > 0 and not _alike(each, best)
    ]
    if best.worth >= _FIT and not (near and best.worth < 2 * _FIT):
        return ()
    other = f", and it may be “{near[0].words}”" if near else ", and it may be none"
    line = placed[best.index].line.number
    message = f"“{best.words}” is taken for the title{other}"
    return (
        Doubt(code="I010", message=message, hint="Write the name of the bake behind “title:”.", line=line),
    )


def _alike(one: _Candidate, other: _Candidate) -> bool:
    a, b = plain(one.words), plain(other.words)
    return a in b or b in a


def _candidates(placed: tuple[Placed, ...], stem: str) -> Iterator[_Candidate]:
    stemmed = set(map(str.casefold, _WORD.findall(re.sub(r"[-_]", " ", stem)))) - _COMMON
    first = next((at for at, each in enumerate(placed) if each.role == "ingredient"), len(placed))
    text = " ".join(each.line.text for each in placed).casefold()
    seen = False
    for index, each in enumerate(placed):
        hinted = each.line.hint == "title"
        if (index > min(first, _TOP) and not hinted) or (each.role not in _ROLES and not hinted):
            continue
        framed = _framed(placed, index)
        for words, base in _readings(each, hinted):
            worth = base + framed + _worth(words, stemmed, text) + (0 if seen else 10)
            worth += 10 if each.role == "title" else -10 if each.role in ("part", "section", "step") else 0
            yield _Candidate(index=index, words=words, worth=worth)
        seen = True


def _framed(placed: tuple[Placed, ...], index: int) -> int:
    """Lines of signs around a line, and a fact or the list right under it, say that it is a heading."""
    around = [placed[at].role for at in (index - 1, index + 1) if 0 <= at < len(placed)]
    after = next((each.role for each in placed[index + 1 :] if each.role not in ("blank", "rule")), "")
    return 20 * (around == ["rule", "rule"]) + 5 * (
        after in ("makes", "portions", "part", "ingredient", "heading")
    )


def _readings(each: Placed, hinted: bool) -> Iterator[tuple[str, int]]:
    """What a line may say as a title, and how much its form says for that."""
    line = one_line(re.sub(r"^(\s*\w+)\t+", r"\1: ", each.line.text))
    if hinted:
        yield line, 70
        return
    bare = _STAMP.sub("", line)
    if found := _LABELLED.match(bare):
        label = found["label"].casefold()
        rest = _AGAIN.sub("", found["rest"]).strip()
        yield _plainly(rest), 35 if label in ("subject", "betreff", "objet") else 60
        return
    if _FIELD.match(bare):
        return
    if found := _MARKED.match(bare):
        yield _plainly(found["words"]), 25
    else:
        if each.role == "title":
            yield _shown(each), 10
        yield _plainly(bare), 15 if bare.isupper() else 10
    if found := _MAKING.search(bare):
        yield _plainly(found["rest"]), 15
    if found := _FIRST.match(bare):
        yield _plainly(found["words"]), 0


def _plainly(words: str) -> str:
    words = re.split(r"\s[|•·]\s", words)[0]
    head, dash, tail = next(
        (words.partition(sign) for sign in (" – ", " — ", " - ") if sign in words), (words, "", "")
    )
    words = head if dash and POINTS.search(tail) else words
    return one_line(words).strip(" *_=~#!'\"“”«»")


def _worth(words: str, stemmed: set[str], text: str) -> int:
    """What the words themselves say for and against a title."""
    told = plain(words)
    every = words.split()
    named = [each.casefold() for each in _WORD.findall(words) if each.casefold() not in _COMMON]
    if not named or len(every) > _MOST_WORDS or len(words) > _LONGEST or told in SECTIONS:
        return -100
    worth = 40 * sum(each in stemmed for each in named) // len(named)
    worth += 20 if any(_BAKES.fullmatch(each) for each in named) else 0
    worth += 10 * sum(text.count(each) > 1 for each in named) // len(named)
    worth -= 60 if told in MENU or _BRACKETED.match(words) or "@" in words or URL.search(words) else 0
    worth -= 40 if _DATED.search(words) or words.endswith("?") or POINTS.search(words) else 0
    worth -= 40 if _TALK.search(words) else 0
    worth -= 35 if words.endswith(".") and len(every) > _FEW else 0
    worth -= 20 if words.endswith((".", ":", ";", ",")) or is_step(words, words) else 0
    worth -= 20 if len(every) > 9 or words[:1] in f"{SIGNS}0123456789" else 0
    worth -= 15 if len(every) == 1 and not worth else 0
    return worth
