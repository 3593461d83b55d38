"""A recipe's document, read whole."""

from dataclasses import replace
from types import MappingProxyType

from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span, whole_file
from generator.formula.intake.about import ABOUT_KEYS, read_about
from generator.formula.intake.accepts import read_accepts
from generator.formula.intake.collect import Collector
from generator.formula.intake.parts import read_parts
from generator.formula.intake.stated import read_weight
from generator.formula.intake.weights import read_losses
from generator.formula.model import Prose
from generator.formula.written import (
    WrittenBlock,
    WrittenRecipe,
    WrittenReference,
    WrittenSection,
    WrittenWay,
    WrittenWords,
)
from generator.measure.unit import Spoons
from generator.source.document import Aside, Body, Document, Mapping, Method, Passage, Section, Step
from generator.source.fields import check_keys

KEYS = (*ABOUT_KEYS, "flour", "dough", "formula", "weighs", "bakes_off", "accepts")


def read_recipe(document: Document, *, spoons: Spoons) -> tuple[WrittenRecipe, Diagnostics]:
    """The recipe as written. Mistakes are reported and left out; the rest is read as far as it goes."""
    collector = Collector()
    front = document.front
    collector.add(check_keys(front, KEYS, what="a recipe"))
    about = read_about(front, collector)
    if not about.title:
        about = replace(about, title=_title_of(document.name))
        collector.say(_untitled(document, about.title))
    parts = read_parts(front, spoons=spoons, collector=collector)
    weighs, bakes_off = read_losses(front, spoons=spoons, collector=collector)
    ways = _ways(document.body, document.path, collector)
    written = WrittenRecipe(
        name=document.name,
        path=document.path,
        about=about,
        parts=parts,
        ways=ways,
        intro=_intro(document),
        prose=_prose(document.body),
        weighs=weighs,
        bakes_off=bakes_off,
        spans=_spans(front, document.path),
        flour=read_weight(front, "flour", spoons=spoons, collector=collector),
        dough=read_weight(front, "dough", spoons=spoons, collector=collector),
        accepts=read_accepts(front, collector),
    )
    return written, collector.found


def _title_of(name: str) -> str:
    """The file's name in words: "honey-oat-braid" is "Honey oat braid"."""
    words = name.replace("-", " ")
    return words[:1].upper() + words[1:]


def _untitled(document: Document, title: str) -> Diagnostic:
    message = f"a recipe should have a title; it is called “{title}” after its file"
    hint = "Write a line “title: …”."
    key = document.front.key("title") or (document.front.entries[0][0] if document.front.entries else None)
    span = key.span if key else document.front.span.slice(0, 1)
    return Diagnostic(code="F018", message=message, span=span, hint=hint)


def _spans(front: Mapping, path: str) -> MappingProxyType[str, Span]:
    """The place of each key, and of the photograph's path and focal point, which are looked at elsewhere."""
    spans = {key.value: key.span for key, _ in front.entries}
    spans.setdefault("title", whole_file(path))
    for key in ("photo", "photo_focus"):
        value = front.get(key)
        if value is not None:
            spans[key] = value.span
    return MappingProxyType(spans)


def _intro(document: Document) -> WrittenWords:
    if document.body is None:
        return WrittenWords(markdown="", references=(), place=lambda start, end: whole_file(document.path))
    return _words(document.body.intro)


def _prose(body: Body | None) -> tuple[Prose, ...]:
    chapters = body.chapters if body else ()
    return tuple(
        Prose(title=chapter.title, markdown=chapter.markdown)
        for chapter in chapters
        if chapter.markdown.strip()
    )


def _ways(body: Body | None, path: str, collector: Collector) -> tuple[WrittenWay, ...]:
    methods = body.methods if body else ()
    if not any(section.blocks for method in methods for section in method.sections):
        collector.say(
            Diagnostic(
                code="R001",
                message="this recipe has no method yet",
                span=body.intro.span if body is not None and body.intro.markdown else whole_file(path),
                hint="Add “## Method” and numbered steps that name each ingredient in braces.",
            )
        )
    return tuple(_way(method) for method in methods)


def _way(method: Method) -> WrittenWay:
    return WrittenWay(
        name=method.name, span=method.span, sections=tuple(_section(section) for section in method.sections)
    )


def _section(section: Section) -> WrittenSection:
    return WrittenSection(title=section.title, blocks=tuple(_block(block) for block in section.blocks))


def _block(block: Step | Aside) -> WrittenBlock:
    words = _words(block.passage)
    if isinstance(block, Step):
        return WrittenBlock(kind="step", number=block.number, words=words, span=block.passage.span)
    return WrittenBlock(kind=block.kind, number=0, words=words, span=block.passage.span)


def _words(passage: Passage) -> WrittenWords:
    references = tuple(WrittenReference(text=each.text, span=each.span) for each in passage.references)
    return WrittenWords(markdown=passage.markdown, references=references, place=passage.span_at)
