"""Everything of the front matter that is not the formula: title, film, links, corrections."""

from collections.abc import Iterable

from generator.diagnostics.diagnostic import Diagnostic
from generator.diagnostics.span import Span
from generator.formula.intake.cautions_off import read_set_aside
from generator.formula.intake.collect import Collector
from generator.formula.intake.focus import read_focus
from generator.formula.intake.machine import (
    MACHINE_KEYS,
    read_own_dough_temperature,
    read_own_machine,
)
from generator.formula.intake.was import read_was
from generator.formula.model import About, ChapterMark, Correction, Credit, Link, Video
from generator.measure.duration import read_clock
from generator.measure.length import read_tin
from generator.source.document import Mapping, Node, Sequence, Text
from generator.source.fields import address_of, check_keys, date_of, moment_of, texts_of, yes_no_of

ABOUT_KEYS = (
    "title",
    "lead",
    "published",
    "kinds",
    "occasions",
    "photo",
    "photo_text",
    "photo_focus",
    "makes",
    "portions",
    "tin",
    "keeps",
    "videos",
    "links",
    "credits",
    "corrections",
    "cautions_off",
    "was",
    *MACHINE_KEYS,
)


FEWEST_CHAPTERS = 3
SHORTEST_CHAPTER = 10


def read_about(front: Mapping, collector: Collector) -> About:
    """The front matter's words, dates and addresses."""
    published = front.get("published")
    kinds = front.get("kinds")
    tin = collector.words(front, "tin")
    return About(
        title=collector.words(front, "title"),
        lead=collector.words(front, "lead"),
        published=None if published is None else collector.value(date_of(published)),
        kinds=() if kinds is None else _kinds(kinds, collector),
        photo=collector.words(front, "photo"),
        photo_text=collector.words(front, "photo_text"),
        photo_focus=read_focus(front.get("photo_focus"), collector),
        makes=collector.words(front, "makes"),
        portions=collector.words(front, "portions"),
        tin=tin,
        tin_read=read_tin(tin) if tin else None,
        keeps=collector.words(front, "keeps"),
        videos=tuple(_video(each, collector) for each in _mappings(front, "videos", collector)),
        links=tuple(_link(each, collector) for each in _mappings(front, "links", collector)),
        credits=tuple(_credit(each, collector) for each in _mappings(front, "credits", collector)),
        corrections=_corrections(front, collector),
        cautions_off=read_set_aside(_mappings(front, "cautions_off", collector), collector),
        machine=read_own_machine(front, collector),
        dough_temperature=read_own_dough_temperature(front, collector),
        occasions=_occasions(front.get("occasions"), collector),
        was=read_was(front.get("was"), collector),
    )


def _kinds(node: Node, collector: Collector) -> tuple[str, ...]:
    texts = collector.value(texts_of(node))
    return once(texts or ())


def _occasions(node: Node | None, collector: Collector) -> tuple[str, ...]:
    """As typed, for the names of feasts begin with a capital letter."""
    texts = collector.value(texts_of(node)) or ()
    named = {" ".join(text.split()).casefold(): " ".join(text.split()) for text in texts}
    return tuple(name for folded, name in named.items() if folded)


def once(texts: Iterable[str]) -> tuple[str, ...]:
    """Each name once, as typed first: whether it has a capital letter is a matter of the language."""
    named: dict[str, str] = {}
    for name in (" ".join(text.split()) for text in texts):
        named.setdefault(name.casefold(), name)
    return tuple(name for folded, name in named.items() if folded)


def _mappings(front: Mapping, key: str, collector: Collector) -> tuple[Mapping, ...]:
    node = front.get(key)
    if node is None or (isinstance(node, Text) and not node.value.strip()):
        return ()
    items = node.items if isinstance(node, Sequence) else (node,)
    for item in items:
        if not isinstance(item, Mapping):
            message = f"each entry of `{key}` needs keys and values"
            hint = f"Look at the form of `{key}` in the documentation: “- url: https://…”."
            collector.say(Diagnostic(code="F016", message=message, span=item.span, hint=hint))
    return tuple(item for item in items if isinstance(item, Mapping))


def _address(node: Mapping, key: str, collector: Collector) -> str:
    value = node.get(key)
    if value is None:
        return ""
    return collector.value(address_of(value)) or ""


def _link(node: Mapping, collector: Collector) -> Link:
    collector.add(check_keys(node, ("title", "url", "paid"), what="a link", needed=("title", "url")))
    paid = node.get("paid")
    return Link(
        title=collector.words(node, "title"),
        url=_address(node, "url", collector),
        paid=bool(collector.value(yes_no_of(paid))) if paid is not None else False,
    )


def _credit(node: Mapping, collector: Collector) -> Credit:
    collector.add(check_keys(node, ("what", "who", "url"), what="a credit", needed=("what", "who")))
    return Credit(
        what=collector.words(node, "what"),
        who=collector.words(node, "who"),
        url=_address(node, "url", collector),
    )


def _video(node: Mapping, collector: Collector) -> Video:
    allowed = ("url", "published", "length", "chapters")
    collector.add(check_keys(node, allowed, what="a video", needed=("url",)))
    published, length, chapters = node.get("published"), node.get("length"), node.get("chapters")
    seconds = _clock(length, collector) if length is not None else None
    return Video(
        url=_address(node, "url", collector),
        published=None if published is None else collector.value(moment_of(published)),
        seconds=seconds,
        chapters=() if chapters is None else _chapters(chapters, seconds, collector),
    )


def _clock(node: Node, collector: Collector) -> int | None:
    text = collector.text(node)
    if text is None:
        return None
    seconds = read_clock(text.value.strip())
    if seconds is None:
        message = f"“{text.value}” is not a time of a film"
        hint = "Write minutes and seconds, such as 18:40, or 1:02:03 with hours."
        collector.say(Diagnostic(code="T010", message=message, span=text.span, hint=hint))
    return seconds


def _chapters(node: Node, length: int | None, collector: Collector) -> tuple[ChapterMark, ...]:
    if not isinstance(node, Mapping):
        message = "chapters are a list of times with titles"
        hint = "Write each on a line of its own, such as “0:00: What we are baking”."
        collector.say(Diagnostic(code="T011", message=message, span=node.span, hint=hint))
        return ()
    marks: list[ChapterMark] = []
    places: list[Span] = []
    for key, value in node.entries:
        seconds = _clock(key, collector)
        title = collector.text(value)
        if seconds is None or title is None:
            continue
        _check_order(marks, seconds, key.span, length, collector)
        words = " ".join(title.value.split())
        marks.append(ChapterMark(seconds=seconds, stamp=key.value.strip(), title=words))
        places.append(key.span)
    _check_lengths(marks, places, length, collector)
    return tuple(marks)


def _check_lengths(
    marks: list[ChapterMark], places: list[Span], length: int | None, collector: Collector
) -> None:
    """A film's page shows chapters from three on, each of ten seconds or more: common practice of video platforms."""
    if 0 < len(marks) < FEWEST_CHAPTERS:
        message = f"chapters are shown only if there are {FEWEST_CHAPTERS} or more"
        hint = "Add chapters, or leave them out."
        collector.say(Diagnostic(code="T013", message=message, span=places[0], hint=hint))
    ends = [*(mark.seconds for mark in marks[1:]), length]
    for mark, span, end in zip(marks, places, ends, strict=False):
        if end is not None and 0 < end - mark.seconds < SHORTEST_CHAPTER:
            message = f"this chapter lasts {end - mark.seconds} s; one of less than {SHORTEST_CHAPTER} s is not shown"
            hint = "Join it with its neighbour."
            collector.say(Diagnostic(code="T013", message=message, span=span, hint=hint))


def _check_order(
    marks: list[ChapterMark], seconds: int, span: Span, length: int | None, collector: Collector
) -> None:
    """Chapters start at 0:00 and go forward inside the film: common practice of video platforms."""
    if not marks and seconds != 0:
        message, hint = "the first chapter must start at 0:00", "Begin with “0:00: …”."
    elif marks and seconds <= marks[-1].seconds:
        message, hint = (
            "this chapter does not come after the one before it",
            "Put the chapters in order of time.",
        )
    elif length is not None and seconds >= length:
        message, hint = (
            "this chapter starts after the film has ended",
            "Mend the chapter's time or `length:`.",
        )
    else:
        return
    collector.say(Diagnostic(code="T012", message=message, span=span, hint=hint))


def _corrections(front: Mapping, collector: Collector) -> tuple[Correction, ...]:
    read = (_correction(each, collector) for each in _mappings(front, "corrections", collector))
    return tuple(correction for correction in read if correction is not None)


def _correction(node: Mapping, collector: Collector) -> Correction | None:
    allowed, needed = ("on", "change", "why", "film", "bake"), ("on", "change", "why")
    collector.add(check_keys(node, allowed, what="a correction", needed=needed))
    day = node.get("on")
    on = None if day is None else collector.value(date_of(day))
    if on is None:
        return None
    change = node.get("change")
    return Correction(
        on=on,
        change=collector.words(node, "change"),
        why=collector.words(node, "why"),
        film=collector.words(node, "film"),
        bake=collector.words(node, "bake"),
        span=change.span if change is not None else node.span,
    )
