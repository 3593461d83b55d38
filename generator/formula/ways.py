"""Written steps become steps whose references are understood, way by way."""

from collections.abc import Iterator
from dataclasses import dataclass, field

from generator.catalogue.lookup import fold
from generator.diagnostics.diagnostic import Diagnostic, Diagnostics
from generator.diagnostics.span import Span
from generator.formula.accounting import Account
from generator.formula.model import Block, Heat, Measure, Mention, Part, Section, Timed, Use, Way, Words
from generator.formula.references import Meaning, meaning_of
from generator.formula.shelf import Shelf
from generator.formula.written import WrittenBlock, WrittenReference, WrittenSection, WrittenWay, WrittenWords


@dataclass(slots=True)
class _Work:
    """What is shared while the ways of one recipe are read. Mentions are kept by their place in the file."""

    parts: tuple[Part, ...]
    shelf: Shelf
    found: list[Diagnostic] = field(default_factory=list)
    mentions: dict[tuple[str, Span], Mention] = field(default_factory=dict)


def understand_ways(
    written: tuple[WrittenWay, ...], *, parts: tuple[Part, ...], shelf: Shelf
) -> tuple[tuple[Way, ...], Diagnostics]:
    """The ways with every reference resolved. A reference that means nothing is left out, with a diagnostic."""
    work = _Work(parts, shelf)
    common = tuple(way for way in written if not way.name)
    named = tuple(way for way in written if way.name)
    for way in named:
        _account((way, *common), way.name, work)
    if not named and common:
        _account(common, "", work)
    _same_rest(named, common, work)
    ways = tuple(_way(way, named, work) for way in written)
    return ways, tuple(dict.fromkeys(work.found))


def _account(ways: tuple[WrittenWay, ...], name: str, work: _Work) -> None:
    """Reads one way with its common steps, in the order of work."""
    account = Account(work.parts, way=name, shelf=work.shelf)
    resolved = True
    for own, reference in _references(ways):
        meaning, wrong = meaning_of(reference, parts=work.parts, shelf=work.shelf, way=own)
        work.found.extend(wrong)
        resolved = resolved and not wrong
        mention = _mention(meaning, account)
        if mention is not None:
            work.mentions[(fold(name), reference.span)] = mention
    # A mistyped name would also be reported as an unused line; the first message is the useful one.
    if resolved and not account.found:
        account.close()
    work.found.extend(account.found)


def _references(ways: tuple[WrittenWay, ...]) -> Iterator[tuple[str, WrittenReference]]:
    """Each reference in the order of work, with the name of the way that it stands in."""
    for way in ways:
        for block in way.blocks:
            for reference in block.words.references:
                yield way.name, reference


def _mention(meaning: Meaning | None, account: Account) -> Mention | None:
    if meaning is None or isinstance(meaning, Timed | Heat | Measure):
        return meaning
    return account.take(meaning)


def _same_rest(named: tuple[WrittenWay, ...], common: tuple[WrittenWay, ...], work: _Work) -> None:
    """A rest in the common steps must be the same amount whichever way was gone."""
    if len(named) < 2:
        return
    for _, reference in _references(common):
        found = [work.mentions.get((fold(way.name), reference.span)) for way in named]
        fractions = {each.fraction for each in found if isinstance(each, Use)}
        if len(fractions) > 1:
            message = f"the ways leave different amounts for “{reference.text}”"
            hint = "Use the same shares in each way, or move this step into the ways."
            work.found.append(Diagnostic(code="R026", message=message, span=reference.span, hint=hint))


def _way(way: WrittenWay, named: tuple[WrittenWay, ...], work: _Work) -> Way:
    name = way.name or (named[0].name if named else "")
    return Way(name=way.name, sections=tuple(_section(each, fold(name), work) for each in way.sections))


def _section(section: WrittenSection, way: str, work: _Work) -> Section:
    return Section(title=section.title, blocks=tuple(_block(each, way, work) for each in section.blocks))


def _block(block: WrittenBlock, way: str, work: _Work) -> Block:
    words = _words(block.words, way, work)
    return Block(kind=block.kind, number=block.number, words=words, span=block.span)


def _words(words: WrittenWords, way: str, work: _Work) -> Words:
    """Mentions renumbered without those that mean nothing; such a document is never rendered."""
    found = tuple(work.mentions.get((way, reference.span)) for reference in words.references)
    kept = tuple(mention for mention in found if mention is not None)
    markdown = words.markdown
    if len(kept) != len(found):
        kept, markdown = (), ""
    return Words(markdown=markdown, mentions=kept)


def understand_intro(
    words: WrittenWords, *, parts: tuple[Part, ...], shelf: Shelf
) -> tuple[Words, Diagnostics]:
    """The introduction may name amounts too, as measures and temperatures; items there are not used up."""
    found: list[Diagnostic] = []
    mentions: list[Mention] = []
    for reference in words.references:
        meaning, wrong = meaning_of(reference, parts=parts, shelf=shelf, way="")
        found.extend(wrong)
        mention = _mention(meaning, Account(parts, way="", shelf=shelf))
        if mention is not None:
            mentions.append(mention)
    if len(mentions) != len(words.references):
        return Words(markdown="", mentions=()), tuple(found)
    return Words(markdown=words.markdown, mentions=tuple(mentions)), tuple(found)
