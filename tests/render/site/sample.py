"""An invented publication as views, rich enough to show every piece of every page."""

from collections.abc import Iterable
from dataclasses import replace
from datetime import date
from io import BytesIO

from PIL import Image, ImageDraw

from generator.declaration.model import Run
from generator.present.views import (
    Amount,
    ArticleView,
    BlockView,
    ChapterView,
    CorrectionView,
    CreditView,
    Fact,
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
    SectionView,
    SegmentView,
    SiteView,
    StageView,
    TeaserView,
    TimesView,
    UseView,
    VideoView,
    WayView,
)

URL = "https://oatandtin.example/bakes/"
BREAD = PageLink(title="bread", path="kinds/bread/")
ENRICHED = PageLink(title="enriched", path="kinds/enriched/")
PEEL = PageLink(title="Candied lemon peel", path="recipes/candied-lemon-peel/")


def drawn_picture(width: int, height: int, colour: str) -> bytes:
    """A plain drawing of a loaf in a tin, as PNG."""
    picture = Image.new("RGB", (width, height), "#d8cdb4")
    pen = ImageDraw.Draw(picture)
    pen.rectangle((0, height * 0.7, width, height), fill="#8f9a94")
    pen.ellipse((width * 0.2, height * 0.25, width * 0.8, height * 0.8), fill=colour)
    for step in range(5):
        left = width * (0.3 + 0.09 * step)
        pen.line((left, height * 0.36, left - width * 0.03, height * 0.5), fill="#f3e3bd", width=width // 60)
    pen.polygon(
        (
            (width * 0.18, height * 0.52),
            (width * 0.82, height * 0.52),
            (width * 0.76, height * 0.86),
            (width * 0.24, height * 0.86),
        ),
        fill="#3b4650",
    )
    written = BytesIO()
    picture.save(written, "PNG")
    return written.getvalue()


_COLOURS = {"media/braid.png": "#a9652f", "media/peel.png": "#d9a441", "media/oven.png": "#7c4a2b"}


def media(source: str) -> bytes:
    """The files of the sample's content folder."""
    if source == "media/plan.txt":
        return b"Left over middle, right over middle.\n"
    if source not in _COLOURS:
        raise FileNotFoundError(source)
    return drawn_picture(1200, 800, _COLOURS[source])


def photo(name: str, text: str) -> PhotoView:
    return PhotoView(
        path=f"media/{name}.jpg",
        source=f"media/{name}.png",
        text=text,
        width=1200,
        height=800,
        url=f"{URL}media/{name}.jpg",
    )


BRAID_PHOTO = photo("braid", "A braided loaf in a dark tin, cut to show the crumb.")


def amount(weight: str, volume: str = "") -> Amount:
    return Amount(weight=weight, volume=volume, first=weight or volume, second=volume if weight else "")


def line(
    item: str,
    weight: str,
    volume: str = "",
    percent: str = "",
    *,
    preparation: str = "",
    note: str = "",
    optional: bool = False,
    choices: tuple[str, ...] = (),
    component: PageLink | None = None,
    allergens: tuple[str, ...] = (),
    may_contain: tuple[str, ...] = (),
    unknown: tuple[str, ...] = (),
) -> LineView:
    return LineView(
        item=item,
        amount=amount(weight, volume),
        preparation=preparation,
        note=note,
        optional=optional,
        choices=choices,
        percent=percent,
        component=component,
        allergens=allergens,
        may_contain=may_contain,
        unknown=unknown,
    )


DOUGH = PartView(
    name="dough",
    title="Dough",
    remark="",
    weight="870 g",
    lines=(
        line("water", "240 g", "1 cup", "55.8 %", preparation="cool"),
        line("egg yolks", "36 g", "2 yolks", "8.4 %", allergens=("egg",)),
        line(
            "bread flour",
            "430 g",
            "3⅓ cups",
            "100 %",
            allergens=("barley", "wheat"),
            note="the maker's cup is spooned and levelled",
        ),
        line("rolled oats", "50 g", "½ cup", "11.6 %", allergens=("oats",)),
        line("table salt", "9 g", "1½ tsp", "2.1 %"),
        line("instant yeast", "7 g", "2¼ tsp", "1.6 %"),
        line(
            "salted butter",
            "60 g",
            "¼ cup",
            "14 %",
            preparation="in small pieces",
            allergens=("milk",),
            choices=("60 g plant margarine",),
        ),
        line(
            "candied lemon peel",
            "40 g",
            "¼ cup",
            "9.3 %",
            component=PEEL,
            may_contain=("tree nuts",),
        ),
        line(
            "caraway seeds", "", "a pinch", optional=True, unknown=("no pack of caraway seeds has been read",)
        ),
    ),
)
FINISH = PartView(
    name="finish",
    title="Finish",
    remark="not counted in the percentages",
    weight="53–58 g",
    lines=(
        line("egg white", "33 g", "1 white", allergens=("egg",)),
        line("honey", "20–25 g", "about 1 tbsp"),
        line("rolled oats", "", "for dusting", allergens=("oats",)),
    ),
)


def mention(kind: str, lead: str, tail: str = "", minutes: int | None = None) -> MentionView:
    return MentionView(kind=kind, lead=lead, tail=tail, minutes=minutes)


def rich(markdown: str, *mentions: MentionView) -> Rich:
    """Words with mention n written as "<n>" in the sample."""
    plain = markdown
    for number, one in enumerate(mentions):
        markdown = markdown.replace(f"<{number}>", f"\ue000{number}\ue001")
        plain = plain.replace(f"<{number}>", one.text)
    return Rich(markdown=markdown, mentions=mentions, plain=plain)


def use(item: str, weight: str, volume: str = "", remark: str = "", *, extra: bool = False) -> UseView:
    return UseView(item=item, amount=amount(weight, volume), remark=remark, extra=extra)


def block(
    kind: str,
    number: int,
    anchor: str,
    words: Rich,
    *,
    uses: tuple[UseView, ...] = (),
    stages: tuple[StageView, ...] = (),
    heats: tuple[HeatView, ...] = (),
) -> BlockView:
    return BlockView(
        kind=kind, number=number, anchor=anchor, words=words, uses=uses, stages=stages, heats=heats
    )


CYCLE = WayView(
    name="dough cycle",
    title="Dough cycle",
    anchor="way-dough-cycle",
    sections=(
        SectionView(
            title="",
            blocks=(
                block(
                    "step",
                    1,
                    "dough-cycle-1",
                    rich(
                        "Put the <0>, <1> and <2> in the pan, then <3>, the <4>, <5>, <6> and <7>.",
                        mention("ingredient", "water", "240 g"),
                        mention("ingredient", "egg yolks", "36 g"),
                        mention("ingredient", "salted butter", "60 g"),
                        mention("ingredient", "bread flour", "215 g, half"),
                        mention("ingredient", "rolled oats", "50 g"),
                        mention("ingredient", "table salt", "9 g"),
                        mention("ingredient", "instant yeast", "7 g"),
                        mention("ingredient", "bread flour", "215 g, the rest"),
                    ),
                    uses=(
                        use("water", "240 g", "1 cup"),
                        use("egg yolks", "36 g", "2 yolks"),
                        use("salted butter", "60 g", "¼ cup"),
                        use("bread flour", "215 g", "1⅔ cups", "half"),
                        use("rolled oats", "50 g", "½ cup"),
                        use("table salt", "9 g", "1½ tsp"),
                        use("instant yeast", "7 g", "2¼ tsp"),
                        use("bread flour", "215 g", "1⅔ cups", "the rest"),
                    ),
                ),
                block(
                    "step",
                    2,
                    "dough-cycle-2",
                    rich(
                        "<0>. After <1> look: if the dough is wet, add <2> at a time. Add the <3> at the "
                        "signal. <4> until doubled.",
                        mention("stage", "Knead 20 min", minutes=20),
                        mention("measure", "5 min", minutes=5),
                        mention("extra", "10 g of bread flour"),
                        mention("ingredient", "candied lemon peel", "40 g"),
                        mention("stage", "Rise 1 h", minutes=60),
                    ),
                    uses=(
                        use("bread flour", "10 g", "4 tsp", "as needed, outside the formula", extra=True),
                        use("candied lemon peel", "40 g", "¼ cup"),
                    ),
                    stages=(
                        StageView(kind="knead", stage="waiting", words="20 min", seconds=(1200, 1200)),
                        StageView(kind="rise", stage="waiting", words="1 h", seconds=(3600, 3600)),
                    ),
                ),
            ),
        ),
    ),
)
BY_HAND = WayView(
    name="by hand",
    title="By hand",
    anchor="way-by-hand",
    sections=(
        SectionView(
            title="",
            blocks=(
                block(
                    "step",
                    1,
                    "by-hand-1",
                    rich(
                        "Mix everything but the peel. <0>. Work in the <1>. <2>.",
                        mention("stage", "Knead 12 min", minutes=12),
                        mention("ingredient", "candied lemon peel", "40 g"),
                        mention("stage", "Rise 1 h 30 min", minutes=90),
                    ),
                    uses=(use("candied lemon peel", "40 g", "¼ cup"),),
                    stages=(
                        StageView(kind="knead", stage="hands_on", words="12 min", seconds=(720, 720)),
                        StageView(kind="rise", stage="waiting", words="1 h 30 min", seconds=(5400, 5400)),
                    ),
                ),
            ),
        ),
    ),
)
COMMON = WayView(
    name="",
    title="Method",
    anchor="method",
    sections=(
        SectionView(
            title="Shape and bake",
            blocks=(
                block(
                    "step",
                    3,
                    "step-3",
                    rich(
                        "Braid, <0>, brush with the <1>.",
                        mention("stage", "rise 40 min", minutes=40),
                        mention("ingredient", "egg white", "33 g"),
                    ),
                    uses=(use("egg white", "33 g", "1 white"),),
                    stages=(StageView(kind="rise", stage="waiting", words="40 min", seconds=(2400, 2400)),),
                ),
                block(
                    "step",
                    4,
                    "step-4",
                    rich(
                        "Bake <0> at <1>, then <2> at <3>, to <4>. Brush the hot loaf with the <5>. <6>.",
                        mention("stage", "20 min", minutes=20),
                        mention("heat", "350 °F", "175 °C"),
                        mention("stage", "bake 12 to 15 min", minutes=15),
                        mention("heat", "325 °F", "165 °C"),
                        mention("heat", "88 °C", "190 °F"),
                        mention("ingredient", "honey", "20–25 g"),
                        mention("stage", "Cool 1 h", minutes=60),
                    ),
                    uses=(use("honey", "20–25 g", "about 1 tbsp"),),
                    stages=(
                        StageView(kind="bake", stage="baking", words="20 min", seconds=(1200, 1200)),
                        StageView(kind="bake", stage="baking", words="12 to 15 min", seconds=(720, 900)),
                        StageView(kind="cool", stage="waiting", words="1 h", seconds=(3600, 3600)),
                    ),
                    heats=(
                        HeatView(kind="oven", words="350 °F (175 °C)"),
                        HeatView(kind="oven", words="325 °F (165 °C)"),
                        HeatView(kind="core", words="88 °C (190 °F)"),
                    ),
                ),
                block("caution", 0, "caution-1", rich("Take the dough out of the oven before you heat it.")),
                block(
                    "text", 0, "text-1", rich("Cut it only when it is *cold*; the crumb tears before that.")
                ),
            ),
        ),
    ),
)


def segment(stage: str, kind: str, words: str, share: str) -> SegmentView:
    return SegmentView(stage=stage, kind=kind, words=words, share=share)


def braid_times() -> tuple[TimesView, ...]:
    together = (
        segment("waiting", "rise", "40 min", "16.9"),
        segment("baking", "bake", "20 min", "8.4"),
        segment("baking", "bake", "12 to 15 min", "5.7"),
        segment("waiting", "cool", "1 h", "25.3"),
    )
    return (
        TimesView(
            way="dough cycle",
            hands_on="",
            waiting="3 h",
            baking="32 to 35 min",
            total="3 h 32 min to 3 h 35 min",
            segments=(
                segment("waiting", "knead", "20 min", "8.4"),
                segment("waiting", "rise", "1 h", "25.3"),
                *together,
            ),
        ),
        TimesView(
            way="by hand",
            hands_on="12 min",
            waiting="3 h 10 min",
            baking="32 to 35 min",
            total="3 h 54 min to 3 h 57 min",
            segments=(
                segment("hands_on", "knead", "12 min", "5.1"),
                segment("waiting", "rise", "1 h 30 min", "38.0"),
                *together,
            ),
        ),
    )


LABEL = LabelView(
    heading="Ingredients",
    ingredients=(
        Run(text="bread flour ("),
        Run(text="wheat", strong=True),
        Run(text=" flour, malted "),
        Run(text="barley", strong=True),
        Run(text=" flour), water, butter ("),
        Run(text="milk", strong=True),
        Run(text=", salt), rolled oats, "),
        Run(text="egg", strong=True),
        Run(text=" yolks, candied lemon peel (lemon peel, sugar), honey, egg white, salt, yeast"),
    ),
    contains_line=(
        Run(text="Contains "),
        Run(text="wheat, milk, egg", strong=True),
        Run(text="."),
    ),
    may_line=(Run(text="May contain "), Run(text="tree nuts", strong=True), Run(text=".")),
    kitchen_line="Made in a kitchen that handles sesame and soy.",
    unfinished="This list is not finished: the pack of caraway seeds has still to be read.",
    advice="Packs differ. Read the packs you use.",
    statement="Ingredients: bread flour (WHEAT flour, malted BARLEY flour), water …",
)

CORRECTION = CorrectionView(
    on=date(2026, 9, 20),
    day="20 September 2026",
    change="bread flour 400 g → 430 g",
    why="Too wet at two bakes in damp weather.",
    because="too wet at two bakes in damp weather",
    film="400 g at 1:25",
    recipe=PageLink(title="Honey oat braid", path="recipes/honey-oat-braid/"),
)

FILM = VideoView(
    url="https://video.example/w/oat-braid",
    name="Honey oat braid",
    published="2026-09-12T15:00:00-05:00",
    day="12 September 2026",
    duration="PT18M40S",
    length="18:40",
    chapters=(
        ChapterView(
            stamp="0:00",
            seconds=0,
            end_seconds=85,
            title="What we are baking",
            url="https://video.example/w/oat-braid?t=0",
        ),
        ChapterView(
            stamp="1:25",
            seconds=85,
            end_seconds=1070,
            title="Weighing out",
            url="https://video.example/w/oat-braid?t=85",
        ),
        ChapterView(
            stamp="17:50",
            seconds=1070,
            end_seconds=None,
            title="Cutting it",
            url="https://video.example/w/oat-braid?t=1070",
        ),
    ),
    film_remarks=("The film still shows bread flour 400 g at 1:25.",),
)


def cards(name: str) -> tuple[PageLink, ...]:
    sizes = (("4 × 6 in", "4x6"), ("5 × 7 in", "5x7"), ("A6", "a6"), ("A5", "a5"))
    return tuple(PageLink(title=words, path=f"recipes/{name}/card-{size}.pdf") for words, size in sizes)


def braid() -> RecipeView:
    """Two ways, a range, a correction, a component, unknown packs."""
    return RecipeView(
        name="honey-oat-braid",
        title="Honey oat braid",
        lead="A soft braided loaf with oats in the crumb and honey on the crust.",
        path="recipes/honey-oat-braid/",
        url=f"{URL}recipes/honey-oat-braid/",
        on_site=True,
        language="en-US",
        maker="Ines Tolliver",
        published=date(2026, 9, 12),
        published_day="12 September 2026",
        updated=date(2026, 9, 20),
        updated_day="20 September 2026",
        revision=2,
        kinds=(BREAD, ENRICHED),
        photo=BRAID_PHOTO,
        makes="1 loaf",
        portions="14 slices",
        tin="loaf 23 × 13 × 7 cm",
        keeps="3 days in a paper bag; freezes for 2 months",
        facts=(
            Fact(label="Raw weight", words="923–928 g"),
            Fact(label="Baked weight", words="812–817 g"),
            Fact(label="Flour", words="430 g"),
            Fact(label="Hydration", words="62.2 %"),
            Fact(label="Salt", words="2.1 %"),
        ),
        parts=(DOUGH, FINISH),
        ways=(CYCLE, BY_HAND),
        common=COMMON,
        times=braid_times(),
        cautions=("Do not taste raw dough or batter: flour and egg are raw. Wash hands and surfaces.",),
        intro=rich("This is the loaf for a wet Sunday. It wants *patience* and a warm shelf."),
        prose=(
            ProseView(
                title="Notes",
                anchor="notes",
                markdown="### Damp days\nHold back a little water. See [the journal](journal/damp-days.md).",
            ),
            ProseView(
                title="Questions", anchor="questions", markdown="**Can I halve it?** Yes, in a small tin."
            ),
        ),
        label=LABEL,
        corrections=(CORRECTION,),
        videos=(FILM,),
        links=(
            LinkView(title="Loaf tin 23 cm", url="https://shop.example/tin", paid=True),
            LinkView(title="A plan for braiding", url="media/plan.txt", paid=False),
            LinkView(title="Oats from the mill", url="https://mill.example/oats", paid=False),
        ),
        paid_words="Links marked as paid earn the maker a small share of what you buy.",
        credits=(
            CreditView(
                what="The way of candying peel", who="A cookery class", url="https://class.example/peel"
            ),
        ),
        used_in=(),
        net_weight="812 g",
        statement_of_place="",
        finished_words="",
        cards=cards("honey-oat-braid"),
        ingredient_lines=("240 g (1 cup) water",),
        iso_times=("PT3H12M", "PT35M", "PT3H57M"),
        yield_words=("14", "1 loaf"),
    )


def peel() -> RecipeView:
    """One list, no ways, no times, hardly anything stated."""
    step = block(
        "step",
        1,
        "step-1",
        rich(
            "Simmer the <0> in <1>.",
            mention("ingredient", "lemon peel", "200 g"),
            mention("part", "the syrup"),
        ),
        uses=(use("lemon peel", "200 g"),),
    )
    return replace(
        braid(),
        name="candied-lemon-peel",
        title="Candied lemon peel",
        lead="",
        path="recipes/candied-lemon-peel/",
        url=f"{URL}recipes/candied-lemon-peel/",
        revision=1,
        updated=None,
        updated_day="",
        kinds=(),
        photo=None,
        makes="",
        portions="",
        tin="",
        keeps="",
        facts=(),
        parts=(
            PartView(
                name="",
                title="",
                remark="",
                weight="400 g",
                lines=(line("lemon peel", "200 g"), line("sugar", "200 g", "1 cup")),
            ),
        ),
        ways=(),
        common=WayView(
            name="", title="Method", anchor="method", sections=(SectionView(title="", blocks=(step,)),)
        ),
        times=(),
        cautions=(),
        intro=rich(""),
        prose=(),
        corrections=(),
        videos=(),
        links=(),
        credits=(),
        used_in=(PageLink(title="Honey oat braid", path="recipes/honey-oat-braid/"),),
        cards=cards("candied-lemon-peel"),
    )


def long_bake() -> RecipeView:
    """Forty ingredients with long names and thirty steps."""
    lines = tuple(
        line(
            f"finely milled heritage grain flour of the {number}th field",
            f"{number * 111:,} g" if number % 3 else f"{number}–{number + 1} kg",
            f"{number}⅔ cups + 2 tbsp",
            f"{number}.{number % 10} %",
            preparation="sifted twice and left in a warm place overnight",
        )
        for number in range(1, 41)
    )
    steps = tuple(
        block(
            "step",
            number,
            f"step-{number}",
            rich("Fold <0> in, then turn the bowl. " * 3, mention("ingredient", "heritage flour", "111 g")),
            uses=(use("finely milled heritage grain flour", "1,250–1,500 g", "9⅔ cups + 2 tbsp"),),
        )
        for number in range(1, 31)
    )
    return replace(
        braid(),
        name="long-bake",
        title="Field loaf of forty grains and a very long unbreakablenamethatgoeson",
        path="recipes/long-bake/",
        url=f"{URL}recipes/long-bake/",
        parts=(PartView(name="dough", title="Dough", remark="", weight="91 kg", lines=lines),),
        ways=(),
        common=WayView(
            name="", title="Method", anchor="method", sections=(SectionView(title="", blocks=steps),)
        ),
        photo=None,
        times=(),
        cards=cards("long-bake"),
    )


def teaser(recipe: RecipeView, total: str) -> TeaserView:
    return TeaserView(
        title=recipe.title,
        path=recipe.path,
        url=recipe.url,
        lead=recipe.lead,
        day=recipe.published_day,
        published=recipe.published or date(2026, 9, 12),
        photo=recipe.photo,
        total=total,
        kinds=recipe.kinds,
    )


def article(
    name: str, title: str, *, standing: bool = False, bakes: Iterable[TeaserView] = ()
) -> ArticleView:
    path = f"{name}/" if standing else f"journal/{name}/"
    return ArticleView(
        name=name,
        title=title,
        lead="What a wet week does to a dough, and what to do about it.",
        path=path,
        url=URL + path,
        on_site=True,
        published=None if standing else date(2026, 9, 15),
        day="" if standing else "15 September 2026",
        markdown=(
            "It rained for nine days.\n\n# The flour drinks\n\nFlour takes up water from the air. "
            "See the [braid](recipes/honey-oat-braid.md).\n\n"
            "![The oven at work](media/oven.png)\n\n> Weigh, then feel.\n\n- one\n- two\n"
        ),
        photo=None if standing else photo("oven", "An oven door with a loaf behind it."),
        kinds=() if standing else (BREAD,),
        bakes=tuple(bakes),
    )


def sample_site() -> SiteView:
    """The whole sample."""
    braided = teaser(braid(), "3 h 32 min to 3 h 57 min")
    candied = replace(
        teaser(peel(), ""),
        day="1 September 2026",
        published=date(2026, 9, 1),
        photo=photo("peel", "Strips of candied peel on a rack."),
        lead="Bitter, then sweet; the syrup is kept for the next batch.",
    )
    long_one = replace(teaser(long_bake(), "2 days"), photo=None, day="20 August 2026")
    damp = article("damp-days", "Damp days", bakes=(braided,))
    return SiteView(
        title="Oat and Tin",
        lead="Loaves, cakes and what goes wrong with them, weighed and written down.",
        maker="Ines Tolliver",
        url=URL,
        contact="hello@oatandtin.example",
        language="en-US",
        region="US",
        paper="letter",
        theme="docket",
        updated="2026-09-20T00:00:00Z",
        day=date(2026, 9, 21),
        pages=(PageLink(title="About", path="about/"),),
        recipes=(braid(), peel(), long_bake()),
        teasers=(braided, candied, long_one),
        journal=(damp,),
        standing=(article("about", "About this kitchen", standing=True),),
        kinds=(
            KindView(title="bread", path="kinds/bread/", bakes=(braided,), articles=(damp,)),
            KindView(title="enriched", path="kinds/enriched/", bakes=(braided,), articles=()),
        ),
        corrections=(CORRECTION,),
        all_recipes=(braid(), peel(), long_bake()),
    )
