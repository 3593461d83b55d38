"""One recipe's view: everything its outputs may say, worded once."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from generator.declaration.lines import line_allergens
from generator.declaration.model import Declaration
from generator.declaration.regions import allergen_word
from generator.formula.model import Formula, Line, Part
from generator.history.events import Ledger
from generator.history.revisions import revision_of
from generator.measure.number import Range, read_number
from generator.measure.unit import SPOONS, Spoons
from generator.present.addresses import CARD_SIZES, absolute, kind_path, recipe_path, slug
from generator.present.amounts import percent_words, weight_words
from generator.present.cautions import cautions_of
from generator.present.corrections import correction_views
from generator.present.durations import named_tin, tin_words
from generator.present.film import video_views
from generator.present.label import label_view
from generator.present.measured import cups_beside, measured_facts, oven_views
from generator.present.measures import line_amount, without_weight
from generator.present.mentions import is_article, linked_words, rich
from generator.present.net_weight import net_weight
from generator.present.reasons import reasons
from generator.present.sheet import sheet_view
from generator.present.steps import way_views
from generator.present.times import iso_times, times_views
from generator.present.views import (
    CreditView,
    Fact,
    LineView,
    LinkView,
    PageLink,
    PartView,
    PhotoView,
    ProseView,
    RecipeView,
)
from generator.settings import Settings
from generator.wording.forms import day_words, small
from generator.wording.speech import later, say
from generator.wording.vocabulary import said

NOT_COUNTED = later("not counted in the percentages")


@dataclass(frozen=True, slots=True, kw_only=True)
class Setting:
    """What a view is made within: all formulas, the declarations by recipe, the photographs, the day, the ledger."""

    settings: Settings
    book: Mapping[str, Formula]
    declarations: Mapping[str, Mapping[str, Declaration]]
    photos: Mapping[str, PhotoView]
    day: date
    ledger: Ledger = field(default_factory=Ledger)
    _titles: dict[str, str] = field(default_factory=dict, init=False, repr=False, compare=False)
    _users: dict[str, list[Formula]] = field(default_factory=dict, init=False, repr=False, compare=False)

    @property
    def spoons(self) -> Spoons:
        return SPOONS[self.settings.cup]

    @property
    def titles(self) -> Mapping[str, str]:
        """The title of every recipe by its name."""
        if not self._titles:
            self._titles.update((name, each.about.title) for name, each in self.book.items())
        return self._titles

    def users(self, name: str) -> Sequence[Formula]:
        """The recipes that are made with this one, in the order of the book."""
        if not self._users:
            # No recipe has this name: it tells a book without components from one that was not looked through.
            self._users[""] = []
            for each in self.book.values():
                for used in dict.fromkeys(line.component for line in each.lines if line.component):
                    self._users.setdefault(used, []).append(each)
        return self._users.get(name, ())

    def on_site(self, published: date | None) -> bool:
        """Whether something of this date is published on the publication day."""
        return published is not None and published <= self.day


def recipe_view(formula: Formula, setting: Setting) -> RecipeView:
    """The whole view of one recipe."""
    settings, spoons, about = setting.settings, setting.spoons, formula.about
    revision, cautions = revision_of(formula, setting.ledger), cautions_of(formula, book=setting.book)
    ways, common = way_views(formula, settings=settings, spoons=spoons)
    path = recipe_path(formula.name)
    return RecipeView(
        name=formula.name,
        title=about.title,
        lead=about.lead,
        path=path,
        url=absolute(settings.url, path),
        on_site=setting.on_site(about.published),
        language=settings.language,
        maker=settings.maker,
        published=about.published,
        published_day=day_words(about.published),
        updated=revision.updated,
        updated_day=day_words(revision.updated),
        revision=revision.number,
        kinds=kind_links(about.kinds),
        photo=photo_view(about.photo, about.photo_text, setting),
        makes=about.makes,
        portions=about.portions,
        tin=tin_words(about.tin_read, about.tin),
        keeps=about.keeps,
        facts=amount_facts(formula),
        parts=tuple(_part(part, setting) for part in formula.parts),
        ways=ways,
        common=common,
        times=times_views(formula),
        cautions=tuple(each.words for each in cautions),
        eater_cautions=tuple(each.words for each in cautions if each.eater),
        intro=rich(formula.intro, settings=settings, spoons=spoons),
        prose=tuple(
            ProseView(title=said(each.title), anchor=slug(each.title), markdown=each.markdown)
            for each in formula.prose
        ),
        label=label_view(setting.declarations[formula.name][settings.region], settings),
        corrections=correction_views(formula, settings, setting.ledger, setting.titles),
        videos=video_views(formula, settings, day=setting.day),
        links=tuple(LinkView(title=each.title, url=each.url, paid=each.paid) for each in about.links),
        paid_words=settings.paid_links if any(each.paid for each in about.links) else "",
        credits=tuple(CreditView(what=each.what, who=each.who, url=each.url) for each in about.credits),
        used_in=_used_in(formula, setting),
        net_weight=_net_weight(formula),
        statement_of_place=settings.statement,
        finished_words=weight_words(formula.totals.finished_grams),
        cards=tuple(
            PageLink(title=named_tin(title), path=f"{path}card-{size}.pdf") for size, title in CARD_SIZES
        ),
        ingredient_lines=tuple(_told_line(line, setting) for line in formula.lines),
        iso_times=iso_times(formula),
        yield_words=_yield_words(formula),
        occasions=about.occasions,
        measured=measured_facts(formula, settings),
        ovens=oven_views(formula, settings),
        sheet=sheet_view(formula, book=setting.book, settings=settings),
    )


def kind_links(kinds: tuple[str, ...]) -> tuple[PageLink, ...]:
    return tuple(PageLink(title=small(kind), path=kind_path(kind)) for kind in kinds)


def photo_view(source: str, text: str, setting: Setting) -> PhotoView | None:
    """The photograph with its own alternative text."""
    known = setting.photos.get(source)
    if known is None:
        return None
    return PhotoView(
        path=known.path,
        source=known.source,
        text=text,
        width=known.width,
        height=known.height,
        url=absolute(setting.settings.url, known.path),
        focus=known.focus,
    )


def amount_facts(formula: Formula) -> tuple[Fact, ...]:
    totals = formula.totals
    counted = any(part.counts for part in formula.parts)
    facts = [
        (
            say("Dough weight") if totals.flour else say("Raw weight"),
            weight_words(totals.dough_grams) if counted else "",
        ),
        (say("Finished weight"), weight_words(totals.finished_grams)),
        (say("Flour"), weight_words(Range.exact(totals.flour)) if totals.flour else ""),
        (say("Hydration"), _hydration(formula)),
        (say("Salt on flour"), percent_words(totals.salt_percent)),
        (say("Prefermented flour"), percent_words(totals.prefermented_percent)),
    ]
    return tuple(Fact(label=label, words=words) for label, words in facts if words)


def _hydration(formula: Formula) -> str:
    true, nominal = (
        percent_words(each) for each in (formula.totals.hydration, formula.totals.hydration_nominal)
    )
    if not true or not formula.totals.hydration or true == nominal:
        return true if formula.totals.hydration else ""
    return say("{percent} ({nominal} by added water and milk alone)", percent=true, nominal=nominal)


def _part(part: Part, setting: Setting) -> PartView:
    remarks = [say(NOT_COUNTED)] if not part.counts else []
    remarks = (
        [say(part.preferment), *remarks] if part.preferment and part.preferment != part.name else remarks
    )
    return PartView(
        name=part.name,
        title=part.name[:1].upper() + part.name[1:],
        remark=", ".join(remarks),
        lines=tuple(_line(line, setting) for line in part.lines),
        weight=weight_words(part.grams) if part.grams.high else "",
    )


def _line(line: Line, setting: Setting) -> LineView:
    carried = line_allergens(line, book=setting.book)
    amount = line_amount(line, settings=setting.settings, spoons=setting.spoons)
    words = say(without_weight(line.written.words))
    note = "; ".join(each for each in (line.written.note, line.note) if each)
    extra = words if words and words not in (amount.weight, amount.volume) else ""
    return LineView(
        item=line.item,
        amount=amount,
        preparation=", ".join(each for each in (line.written.preparation, extra) if each),
        note=note,
        optional=line.optional,
        choices=tuple(ingredient_line(each, setting) for each in line.alternatives),
        percent=percent_words(line.percent),
        component=_component(line, setting),
        allergens=tuple(map(allergen_word, carried.allergens)),
        may_contain=tuple(map(allergen_word, carried.may_contain)),
        unknown=reasons(carried.unknown),
        beside=cups_beside(line, setting.settings),
    )


def _component(line: Line, setting: Setting) -> PageLink | None:
    """A link to the recipe of a component, if that is on the site."""
    formula = setting.book.get(line.component or "")
    if formula is None or not setting.on_site(formula.about.published):
        return None
    return PageLink(title=formula.about.title, path=recipe_path(formula.name))


def _used_in(formula: Formula, setting: Setting) -> tuple[PageLink, ...]:
    users = (each for each in setting.users(formula.name) if setting.on_site(each.about.published))
    return tuple(PageLink(title=each.about.title, path=recipe_path(each.name)) for each in users)


def ingredient_line(line: Line, setting: Setting) -> str:
    """A line in words: `430 g (3⅓ cups) bread flour, sifted`."""
    amount = line_amount(line, settings=setting.settings, spoons=setting.spoons)
    if line.count is not None and not line.volume_stated and amount.weight:
        words = f"{amount.volume} {line.item} ({amount.weight})"
    elif line.grams is None and line.written.words and not is_article(line):
        words = f"{line.item}, {amount.first}"
    else:
        second = f"{amount.first} ({amount.second})" if amount.second else amount.first
        words = linked_words(second, line.item) if is_article(line) else f"{second} {line.item}".strip()
    return f"{words}, {line.written.preparation}" if line.written.preparation else words


def _told_line(line: Line, setting: Setting) -> str:
    """The line where nothing else says so: that it is optional, and its alternatives, which may carry allergens."""
    words = ingredient_line(line, setting)
    words = say("{line} (optional)", line=words) if line.optional else words
    others = (say(", or {line}", line=ingredient_line(each, setting)) for each in line.alternatives)
    return words + "".join(others)


def _net_weight(formula: Formula) -> str:
    """Both units, rounded down, for one finished piece; "" where its weight is not known."""
    finished = formula.totals.finished_grams
    made = read_number(formula.about.makes) if formula.about.makes else (Range.exact(1), 0)
    if finished is None or made is None or made[0] != Range.exact(1):
        return ""
    net = net_weight(finished.low, "US")
    return f"{net.lead} {net.large}"


def _yield_words(formula: Formula) -> tuple[str, ...]:
    """A plain number of portions first, where one is stated, then the words."""
    portions = read_number(formula.about.portions) if formula.about.portions else None
    number = (str(portions[0].low),) if portions and portions[0].is_exact else ()
    return (*number, *(each for each in (formula.about.makes, formula.about.portions) if each))
