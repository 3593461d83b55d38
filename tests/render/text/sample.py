"""A publication made by hand that has every piece a text output can hold: two ways, a range, a correction, paid
links, two films, an unfinished label, a post, a page."""

import re
from dataclasses import replace
from datetime import date

from generator.present.views import (
    Amount,
    ArticleView,
    BlockView,
    ChapterView,
    CorrectionView,
    CreditView,
    HeatView,
    KindView,
    LabelView,
    LineView,
    LinkView,
    MentionView,
    PageLink,
    PartView,
    PhotoView,
    ProseView,
    RecipeView,
    Rich,
    Run,
    SectionView,
    SiteView,
    StageView,
    TeaserView,
    TimesView,
    VideoView,
    WayView,
)

SITE = "https://plumtin.example/notes/"
BREAD = PageLink(title="bread", path="kinds/bread/")
HERE = PageLink(title="Plum braid", path="recipes/plum-braid/")


def line(item: str, first: str, second: str = "", **more: object) -> LineView:
    plain = LineView(
        item=item,
        amount=Amount(weight=first, volume=second, first=first, second=second),
        preparation="",
        note="",
        optional=False,
        choices=(),
        percent="",
        component=None,
        allergens=(),
        may_contain=(),
        unknown=(),
    )
    return replace(plain, **more)  # type: ignore[arg-type]


def part(title: str, *lines: LineView) -> PartView:
    return PartView(name=title.lower(), title=title, remark="", lines=lines, weight="")


def rich(text: str, *mentions: MentionView) -> Rich:
    """Text with `@` where the next mention stands."""
    pieces = text.split("@")
    marked, plain = pieces[0], pieces[0]
    for number, (mention, piece) in enumerate(zip(mentions, pieces[1:], strict=True)):
        marked += f"\ue000{number}\ue001{piece}"
        plain += mention.text + piece
    return Rich(markdown=marked, mentions=mentions, plain=re.sub(r"\[(.*?)\]\(.*?\)", r"\1", plain))


def said(lead: str, tail: str = "", kind: str = "ingredient") -> MentionView:
    return MentionView(kind=kind, lead=lead, tail=tail)


def block(kind: str, number: int, anchor: str, words: Rich, *heats: tuple[str, str]) -> BlockView:
    return BlockView(
        kind=kind,
        number=number,
        anchor=anchor,
        words=words,
        uses=(),
        stages=(StageView(kind="bake", stage="baking", words="20 min", seconds=(1200, 1200)),)
        if heats
        else (),
        heats=tuple(HeatView(kind=kind, words=words) for kind, words in heats),
    )


def section(title: str, *blocks: BlockView) -> SectionView:
    return SectionView(title=title, blocks=blocks)


def way(name: str, title: str, anchor: str, *sections: SectionView) -> WayView:
    return WayView(name=name, title=title, anchor=anchor, sections=sections)


DOUGH = part(
    "Dough",
    line("water", "240\u00a0g", "1\u00a0cup", preparation="cool"),
    line("egg yolks", "36\u00a0g", "2"),
    line("bread flour", "430\u00a0g", "3⅓\u00a0cups", allergens=("barley", "wheat")),
    line("rye flour", "20–25\u00a0g", "2½–3\u00a0tbsp", allergens=("rye",), may_contain=("mustard",)),
    line("salted butter", "60\u00a0g", "¼\u00a0cup", allergens=("milk",), choices=("60 g margarine",)),
    line("cardamom", "a\u00a0pinch"),
    line("salt", "to taste"),
)
FINISH = part("Finish", line("sugar", "10\u00a0g", "2½\u00a0tsp", optional=True, note="coarse"))

CYCLE = way(
    "dough cycle",
    "Dough cycle",
    "way-dough-cycle",
    section(
        "",
        block(
            "step",
            1,
            "step-1-1-1",
            rich(
                "Put the @ and the @ in the pan; start the [cycle](#leaf-label).",
                said("water", "240\u00a0g"),
                said("bread flour", "430\u00a0g"),
            ),
        ),
        block("text", 0, "step-1-1-2", rich("Now you may sit down.")),
    ),
)
HAND = way(
    "by hand",
    "By hand",
    "way-by-hand",
    section("", block("step", 1, "step-2-1-1", rich("Mix all. @", said("Knead 12\u00a0min", kind="stage")))),
)
COMMON = way(
    "",
    "Method",
    "method",
    section("Shape", block("step", 1, "step-3-1-1", rich("Braid it."))),
    section(
        "Bake",
        block(
            "step",
            1,
            "step-3-2-1",
            rich(
                "Bake @ at @, to @.",
                said("20\u00a0min"),
                said("350\u00a0°F", "175\u00a0°C"),
                said("88\u00a0°C", "190\u00a0°F"),
            ),
            ("oven", "350\u00a0°F (175\u00a0°C)"),
            ("core", "88\u00a0°C (190\u00a0°F)"),
        ),
        block("caution", 0, "step-3-2-2", rich("The syrup is hotter than it looks.")),
    ),
)
LABEL = LabelView(
    heading="Ingredients",
    ingredients=(
        Run(text="bread flour ("),
        Run(text="wheat", strong=True),
        Run(text=" flour), water, rye flour"),
    ),
    contains_line=(Run(text="Contains: "), Run(text="wheat, milk, egg", strong=True), Run(text=".")),
    may_line=(Run(text="May contain: sesame."),),
    kitchen_line="Made in a home kitchen that also handles walnuts.",
    unfinished="This list is not finished: the pack of cardamom has not been read.",
    advice="If you have an allergy, ask the maker before you eat.",
    statement="",
    also_in=("barley", "rye"),
    also_may=("mustard",),
)
CORRECTION = CorrectionView(
    on=date(2026, 9, 20),
    day="September 20, 2026",
    change="dough/bread flour 400 g → 430 g",
    why="Too wet twice",
    because="too wet twice",
    film="400 g at 1:25",
    recipe=HERE,
)


def film(name: str, *chapters: tuple[str, int, str]) -> VideoView:
    url = f"https://video.example/w/{name}"
    starts = [seconds for _, seconds, _ in chapters]
    return VideoView(
        url=url,
        name="Plum braid",
        published="2026-09-12T15:00:00-05:00",
        day="September 12, 2026",
        duration="PT18M40S",
        length="18:40",
        chapters=tuple(
            ChapterView(stamp=stamp, seconds=seconds, end_seconds=end, title=title, url=f"{url}?t={seconds}")
            for (stamp, seconds, title), end in zip(chapters, [*starts[1:], 1120], strict=True)
        ),
        film_remarks=(),
    )


FILM = film(
    "plum-braid", ("0:00", 0, "What we bake"), ("1:25", 85, "Weighing out"), ("17:50", 1070, "Cutting it")
)
PHOTO = PhotoView(
    path="media/plum-braid.jpg",
    source="media/plum-braid.jpg",
    text="A braided loaf on a slate board.",
    width=1200,
    height=800,
    url=f"{SITE}media/plum-braid.jpg",
)
BRAID = RecipeView(
    name="plum-braid",
    title="Plum braid",
    lead="A braid with plums & patience.",
    path=HERE.path,
    url=SITE + HERE.path,
    on_site=True,
    occasions=("plum time",),
    language="en-US",
    maker="Odile Marrable",
    published=date(2026, 9, 12),
    published_day="September 12, 2026",
    updated=date(2026, 9, 20),
    updated_day="September 20, 2026",
    revision=2,
    kinds=(BREAD, PageLink(title="enriched", path="kinds/enriched/")),
    photo=PHOTO,
    makes="1 loaf",
    portions="14 slices",
    tin="loaf 23 × 13 × 7 cm (9 × 5 × 2¾ in)",
    keeps="3 days in a paper bag",
    facts=(),
    parts=(DOUGH, FINISH),
    ways=(CYCLE, HAND),
    common=COMMON,
    times=(
        TimesView(
            way="dough cycle", hands_on="", waiting="2 h", baking="20 min", total="2 h 20 min", segments=()
        ),
        TimesView(
            way="by hand", hands_on="12 min", waiting="2 h", baking="20 min", total="2 h 32 min", segments=()
        ),
    ),
    cautions=("Do not taste raw dough.",),
    intro=rich("See the [first post](journal/wet-plums.md) and ![the shelf](media/shelf.png)."),
    prose=(ProseView(title="Notes", anchor="notes", markdown="Keep it at < 20 °C. [Method](#method)."),),
    label=LABEL,
    corrections=(CORRECTION,),
    videos=(FILM,),
    links=(
        LinkView(title="How to braid", url="https://knots.example/braid", paid=False),
        LinkView(title="Loaf tin", url="https://shop.example/tin?a=1&b=<2>", paid=True),
    ),
    paid_words="I earn a commission if you buy through a paid link.",
    credits=(CreditView(what="The braid", who="A cookery class", url="https://class.example/braid"),),
    used_in=(),
    net_weight="",
    statement_of_place="",
    finished_words="",
    cards=(PageLink(title="4 × 6 in", path="recipes/plum-braid/card-4x6.pdf"),),
    ingredient_lines=("240 g (1 cup) water, cool", "430 g (3⅓ cups) bread flour"),
    iso_times=("PT2H", "PT20M", "PT2H20M"),
    yield_words=("14", "1 loaf", "14 slices"),
)
# A bake without a picture, without ways, without most things.
SUGAR = replace(
    BRAID,
    name="vanilla-sugar",
    title="Vanilla sugar",
    lead="",
    path="recipes/vanilla-sugar/",
    url=f"{SITE}recipes/vanilla-sugar/",
    published=date(2026, 9, 1),
    published_day="September 1, 2026",
    updated=date(2026, 9, 1),
    updated_day="September 1, 2026",
    revision=1,
    kinds=(),
    occasions=(),
    photo=None,
    makes="",
    portions="",
    tin="",
    keeps="",
    parts=(part("", line("sugar", "200\u00a0g", "1\u00a0cup")),),
    ways=(),
    common=way(
        "",
        "Method",
        "method",
        section("", block("step", 1, "step-1-1-1", rich("Stir the @.", said("sugar", "200 g")))),
    ),
    times=(),
    cautions=(),
    intro=rich(""),
    prose=(),
    label=replace(
        LABEL,
        contains_line=(),
        may_line=(),
        kitchen_line="",
        unfinished="",
        ingredients=(Run(text="Sugar"),),
        also_in=(),
        also_may=(),
    ),
    corrections=(),
    videos=(FILM,),
    links=(),
    paid_words="",
    credits=(),
    cards=(),
    ingredient_lines=("200 g (1 cup) sugar",),
    iso_times=("", "", ""),
    yield_words=(),
)


def many(title: str = "Feast", *, lines: int = 40, steps: int = 30) -> RecipeView:
    """A bake far too long for its place."""
    told = tuple(
        line(f"ingredient number {number}", f"{number * 13} g", f"{number}¾ cups")
        for number in range(1, lines + 1)
    )
    work = tuple(
        block(
            "step",
            number,
            f"step-{number}",
            rich(f"Stir with patience and turn the bowl after each {number}th stroke. " * 3),
        )
        for number in range(1, steps + 1)
    )
    return replace(
        BRAID,
        title=title,
        parts=(part("Dough", *told),),
        ways=(),
        common=way("", "Method", "method", section("", *work)),
    )


POST = ArticleView(
    name="wet-plums",
    title="Wet plums",
    lead="What rain does to fruit.",
    path="journal/wet-plums/",
    url=f"{SITE}journal/wet-plums/",
    on_site=True,
    published=date(2026, 9, 15),
    day="September 15, 2026",
    markdown="It rained ]]> & poured.\n\n# Water\n\n[Braid](recipes/plum-braid.md), [me](standing/about.md).",
    photo=None,
    kinds=(BREAD,),
    bakes=(),
)
ABOUT = replace(
    POST, name="about", title="About", path="about/", url=f"{SITE}about/", published=None, day="", kinds=()
)


def teaser(view: RecipeView) -> TeaserView:
    return TeaserView(
        title=view.title,
        path=view.path,
        url=view.url,
        lead=view.lead,
        day=view.published_day,
        published=view.published or date.min,
        photo=view.photo,
        total="",
        kinds=view.kinds,
    )


PUBLICATION = SiteView(
    title="Plums & Tins",
    lead="Loaves, weighed.",
    maker="Odile Marrable",
    url=SITE,
    contact="",
    language="en-US",
    region="US",
    paper="letter",
    theme="docket",
    updated="2026-09-20T00:00:00Z",
    day=date(2026, 9, 21),
    pages=(PageLink(title="About", path="about/"),),
    recipes=(BRAID, SUGAR),
    teasers=(teaser(BRAID), teaser(SUGAR)),
    journal=(replace(POST, bakes=(teaser(BRAID),)),),
    standing=(ABOUT,),
    kinds=(KindView(title="bread", path="kinds/bread/", bakes=(teaser(BRAID),), articles=(POST,)),),
    corrections=(CORRECTION,),
    all_recipes=(BRAID, SUGAR),
)
