"""A bake as HTML for a feed: the whole of it, in the order of its page."""

from collections.abc import Iterable, Iterator

from markupsafe import Markup

from generator.present.views import (
    BlockView,
    ChapterView,
    CorrectionView,
    LineView,
    PartView,
    RecipeView,
    Run,
    SectionView,
    TimesView,
    VideoView,
    WayView,
)
from generator.render.feeds.pieces import headed, items, link, paragraph, photograph, prose, rich
from generator.render.feeds.places import absolute
from generator.render.plain_words import (
    choice_words,
    correction_words,
    ingredient_words,
    sentence,
    times_words,
    way_title,
)
from generator.render.rich_text import tied
from generator.wording.speech import say


def recipe_html(view: RecipeView, site: str) -> Markup:
    """Every section that has something to say. `site` is the address of the publication."""
    return Markup().join(_sections(view, site))


def _sections(view: RecipeView, site: str) -> Iterator[Markup]:
    yield items(_correction(each) for each in view.corrections)
    yield photograph(view.photo)
    yield paragraph(view.lead)
    yield rich(view.intro, page=view.url, site=site)
    yield Markup().join(_caution(Markup("{}").format(tied(words))) for words in view.cautions)
    yield headed(say("Weigh out"), _docket(view, site))
    yield headed(say("Time"), items(_time(each, view) for each in view.times if each.total))
    yield headed(say("Method"), _method(view, site))
    yield headed(say("What is in it"), _label(view))
    yield headed(say("Keeping"), paragraph(view.keeps))
    for chapter in view.prose:
        yield headed(chapter.title, prose(chapter.markdown, page=view.url, site=site, level=3))
    yield headed(say("Film"), Markup().join(_film(film) for film in view.films_on_site))
    yield headed(say("Where to get it"), _links(view))
    yield headed(say("With thanks"), items(_credits(view)))


def _correction(each: CorrectionView) -> Markup:
    return Markup("<strong>{}</strong> {}").format(
        say("Corrected {day}:", day=each.day), tied(correction_words(each))
    )


def _caution(words: Markup) -> Markup:
    return Markup("<p><strong>{}</strong> {}</p>\n").format(say("Caution:"), words)


def _docket(view: RecipeView, site: str) -> Markup:
    made = ", ".join(words for words in dict.fromkeys((view.makes, view.portions)) if words)
    head = ((say("Makes"), made), (say("Tin"), view.tin))
    told = Markup().join(paragraph(f"{label}: {words}") for label, words in head if words)
    return told + Markup().join(_part(part, site) for part in view.parts)


def _part(part: PartView, site: str) -> Markup:
    lines = items(_line(line, site) for line in part.lines)
    title = f"{part.title} ({part.remark})" if part.title and part.remark else part.title
    return headed(title, lines, level=3) if title else lines


def _line(line: LineView, site: str) -> Markup:
    words = Markup("{}").format(tied(ingredient_words(line)))
    if line.component is None:
        return words
    return words + Markup(" ({})").format(link(say("its recipe"), absolute(line.component.path, site)))


def _time(each: TimesView, view: RecipeView) -> Markup:
    title = way_title(view, each.way)
    return Markup("{}{}").format(f"{title}: " if title else "", tied(times_words(each)))


def _method(view: RecipeView, site: str) -> Markup:
    common = _sections_of(view.common, view, site, level=4 if view.ways else 3) if view.common else Markup()
    if not view.ways:
        return common
    told = Markup().join(
        headed(way.title, _sections_of(way, view, site, level=4), level=3) for way in view.ways
    )
    choice = choice_words(view)
    asked = paragraph(sentence(f"{choice[:1].upper()}{choice[1:]}"))
    return asked + told + headed(say("Then, for all ways"), common, level=3)


def _sections_of(way: WayView, view: RecipeView, site: str, *, level: int) -> Markup:
    return Markup().join(_section(section, view, site, level=level) for section in way.sections)


def _section(section: SectionView, view: RecipeView, site: str, *, level: int) -> Markup:
    blocks = Markup().join(_block(block, view, site) for block in section.blocks)
    return headed(section.title, blocks, level=level) if section.title else blocks


def _block(block: BlockView, view: RecipeView, site: str) -> Markup:
    words = rich(block.words, page=view.url, site=site, level=5)
    if block.kind == "caution":
        box = Markup("<blockquote>\n<p><strong>{}</strong></p>\n{}</blockquote>\n")
        return box.format(say("Caution:"), words)
    if block.kind == "step":
        return Markup('<ol start="{}">\n<li>\n{}</li>\n</ol>\n').format(block.number, words)
    return words


def _runs(runs: Iterable[Run]) -> Markup:
    """Words of a declaration; what must stand out is bold."""
    return Markup().join(Markup("<b>{}</b>" if run.strong else "{}").format(run.text) for run in runs)


def _label(view: RecipeView) -> Markup:
    label = view.label
    listed = (
        Markup("<p>{}: {}</p>\n").format(label.heading, _runs(label.ingredients))
        if label.ingredients
        else Markup()
    )
    lines = Markup().join(
        Markup("<p>{}</p>\n").format(_runs(runs)) for runs in (label.contains_line, label.may_line) if runs
    )
    unfinished = (
        Markup("<p><strong>{}</strong></p>\n").format(label.unfinished) if label.unfinished else Markup()
    )
    return unfinished + listed + lines + paragraph(label.kitchen_line) + paragraph(label.advice)


def _film(film: VideoView) -> Markup:
    about = ", ".join(words for words in (film.length, film.day) if words)
    told = Markup("<p>{}{}</p>\n").format(link(film.name, film.url), f" ({about})" if about else "")
    told += Markup().join(paragraph(remark) for remark in film.film_remarks)
    return told + items(_chapter(chapter) for chapter in film.chapters)


def _chapter(chapter: ChapterView) -> Markup:
    """A chapter, and what it still shows."""
    remarks = Markup().join(Markup(" ({})").format(tied(remark)) for remark in chapter.remarks)
    return link(f"{chapter.stamp} {chapter.title}", chapter.url) + remarks


def _links(view: RecipeView) -> Markup:
    """The disclosure stands before the first paid link, and each of those says that it is one."""
    lines = items(
        Markup("{}{}").format(say("Paid link: ") if each.paid else "", link(each.title, each.url))
        for each in view.links
    )
    return paragraph(view.paid_words) + lines


def _credits(view: RecipeView) -> Iterator[Markup]:
    for each in view.credits:
        yield Markup("{}: {}").format(each.what, link(each.who, each.url) if each.url else each.who)
