"""Recipes as the reader sees them, made by hand: a typical one, a tiny one, and one that is far too long."""

from dataclasses import replace
from datetime import date

from generator.declaration.model import Run
from generator.present.views import (
    Amount,
    BlockView,
    CorrectionView,
    Fact,
    HeatView,
    LabelView,
    LineView,
    MentionView,
    PageLink,
    PartView,
    RecipeView,
    Rich,
    SectionView,
    SegmentView,
    StageView,
    TimesView,
    UseView,
    WayView,
)

SITE = "https://bakes.example/"


def amount(weight: str, volume: str = "") -> Amount:
    return Amount(weight=weight, volume=volume, first=weight, second=volume)


def line(item: str, weight: str, volume: str = "", **more: object) -> LineView:
    plain = LineView(
        item=item,
        amount=amount(weight, volume),
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


def rich(text: str, *mentions: MentionView) -> Rich:
    """Text with `@` where the next mention stands."""
    pieces = text.split("@")
    assert len(pieces) == len(mentions) + 1
    marked, plain = pieces[0], pieces[0]
    for number, (mention, piece) in enumerate(zip(mentions, pieces[1:], strict=True)):
        marked += f"\ue000{number}\ue001{piece}"
        plain += mention.text + piece
    return Rich(markdown=marked, mentions=mentions, plain=plain)


def said(lead: str, tail: str = "", kind: str = "ingredient") -> MentionView:
    return MentionView(kind=kind, lead=lead, tail=tail)


def use(item: str, weight: str, volume: str = "", remark: str = "", *, extra: bool = False) -> UseView:
    return UseView(item=item, amount=amount(weight, volume), remark=remark, extra=extra)


def step(
    number: int,
    words: Rich,
    *,
    uses: tuple[UseView, ...] = (),
    stages: tuple[StageView, ...] = (),
    heats: tuple[HeatView, ...] = (),
    way: str = "",
) -> BlockView:
    return BlockView(
        kind="step",
        number=number,
        anchor=f"step-{way}{number}",
        words=words,
        uses=uses,
        stages=stages,
        heats=heats,
    )


def caution(text: str) -> BlockView:
    return BlockView(
        kind="caution",
        number=0,
        anchor=f"caution-{len(text)}",
        words=rich(text),
        uses=(),
        stages=(),
        heats=(),
    )


def way(name: str, title: str, *sections: SectionView) -> WayView:
    return WayView(name=name, title=title, anchor=name.replace(" ", "-") or "method", sections=sections)


_DOUGH = PartView(
    name="dough",
    title="Dough",
    remark="",
    weight="870 g",
    lines=(
        line("water", "240 g", "1 cup", preparation="cool", percent="55.8 %"),
        line("egg yolks", "36 g", "2", percent="8.4 %", allergens=("egg",)),
        line("bread flour", "430 g", "3⅓ cups", percent="100 %", allergens=("barley", "wheat")),
        line("rolled oats", "50 g", "½ cup plus 1 tablespoon", percent="11.6 %", allergens=("oats",)),
        line("table salt", "9 g", "1½ teaspoons", percent="2.1 %"),
        line("instant yeast", "7 g", "2¼ teaspoons", percent="1.6 %"),
        line("salted butter", "60 g", "¼ cup", preparation="in small pieces", percent="14 %"),
        line(
            "candied lemon peel",
            "40 g",
            "¼ cup",
            percent="9.3 %",
            component=PageLink(title="Candied lemon peel", path="recipes/candied-lemon-peel/"),
        ),
    ),
)
_FINISH = PartView(
    name="finish",
    title="Finish",
    remark="does not count in percent",
    weight="53–58 g",
    lines=(
        line("egg white", "33 g", "1"),
        line("honey", "20–25 g", "1 tablespoon", optional=True, choices=("20 g maple syrup (1 tablespoon)",)),
    ),
)
_CYCLE = way(
    "dough cycle",
    "Dough cycle",
    SectionView(
        title="",
        blocks=(
            step(
                1,
                rich(
                    "Put the @, @ and @ in the pan, then @, the @, @, @ and @.",
                    said("water", "240 g"),
                    said("egg yolks", "36 g"),
                    said("salted butter", "60 g"),
                    said("bread flour", "215 g, half"),
                    said("rolled oats", "50 g"),
                    said("table salt", "9 g"),
                    said("instant yeast", "7 g"),
                    said("bread flour", "215 g, the rest"),
                ),
                uses=(
                    use("water", "240 g", "1 cup"),
                    use("egg yolks", "36 g", "2"),
                    use("salted butter", "60 g", "¼ cup"),
                    use("bread flour", "215 g", "1⅔ cups", "half"),
                    use("rolled oats", "50 g", "½ cup plus 1 tablespoon"),
                    use("table salt", "9 g", "1½ teaspoons"),
                    use("instant yeast", "7 g", "2¼ teaspoons"),
                    use("bread flour", "215 g", "1⅔ cups", "the rest"),
                ),
                way="cycle",
            ),
            step(
                2,
                rich(
                    "@. After @ look: if the dough is wet, add @ at a time. Add the @ at the signal. "
                    "@ until doubled.",
                    said("knead 20 min", kind="stage"),
                    said("5 min", kind="measure"),
                    said("bread flour", "10 g", kind="extra"),
                    said("candied lemon peel", "40 g"),
                    said("rise 1 h", kind="stage"),
                ),
                uses=(
                    use(
                        "bread flour", "10 g", "1¼ tablespoons", "as needed, outside the formula", extra=True
                    ),
                    use("candied lemon peel", "40 g", "¼ cup"),
                ),
                stages=(
                    StageView(kind="knead", stage="waiting", words="20 min", seconds=(1200, 1200)),
                    StageView(kind="rise", stage="waiting", words="1 h", seconds=(3600, 3600)),
                ),
                way="cycle",
            ),
        ),
    ),
)
_HAND = way(
    "by hand",
    "By hand",
    SectionView(
        title="",
        blocks=(
            step(
                1,
                rich(
                    "Mix everything of the @. @. @.",
                    said("dough", kind="part"),
                    said("knead 12 min", kind="stage"),
                    said("rise 1 h 30 min", kind="stage"),
                ),
                uses=tuple(
                    UseView(item=each.item, amount=each.amount, remark="", extra=False)
                    for each in _DOUGH.lines
                ),
                stages=(
                    StageView(kind="knead", stage="hands_on", words="12 min", seconds=(720, 720)),
                    StageView(kind="rise", stage="waiting", words="1 h 30 min", seconds=(5400, 5400)),
                ),
                way="hand",
            ),
        ),
    ),
)
_COMMON = way(
    "",
    "",
    SectionView(
        title="Shape and bake",
        blocks=(
            step(
                1,
                rich(
                    "Braid, @, brush with the @.",
                    said("rise 40 min", kind="stage"),
                    said("egg white", "33 g"),
                ),
                uses=(use("egg white", "33 g", "1"),),
                stages=(StageView(kind="rise", stage="waiting", words="40 min", seconds=(2400, 2400)),),
            ),
            caution("Take the dough out of the oven before you heat it."),
            step(
                2,
                rich(
                    "Bake @ at @, then @ at @, to @. Brush the hot loaf with the @. @.",
                    said("20 min", kind="stage"),
                    said("350 °F (175 °C)", kind="heat"),
                    said("12–15 min", kind="stage"),
                    said("325 °F (165 °C)", kind="heat"),
                    said("88 °C (190 °F)", kind="heat"),
                    said("honey", "20–25 g"),
                    said("cool 1 h", kind="stage"),
                ),
                uses=(use("honey", "20–25 g", "1 tablespoon"),),
                stages=(
                    StageView(kind="bake", stage="baking", words="20 min", seconds=(1200, 1200)),
                    StageView(kind="bake", stage="baking", words="12–15 min", seconds=(720, 900)),
                    StageView(kind="cool", stage="waiting", words="1 h", seconds=(3600, 3600)),
                ),
                heats=(
                    HeatView(kind="oven", words="350 °F (175 °C)"),
                    HeatView(kind="oven", words="325 °F (165 °C)"),
                    HeatView(kind="core", words="88 °C (190 °F)"),
                ),
            ),
        ),
    ),
)


def _segment(stage: str, kind: str, words: str, share: str) -> SegmentView:
    return SegmentView(stage=stage, kind=kind, words=words, share=share)


_TIMES = (
    TimesView(
        way="dough cycle",
        hands_on="0 min",
        waiting="3 h",
        baking="32–35 min",
        total="3 h 32 min to 3 h 35 min",
        segments=(
            _segment("waiting", "knead", "20 min", "8.8"),
            _segment("waiting", "rise", "1 h", "26.4"),
            _segment("waiting", "rise", "40 min", "17.6"),
            _segment("baking", "bake", "20 min", "8.8"),
            _segment("baking", "bake", "12–15 min", "6.6"),
            _segment("waiting", "cool", "1 h", "26.4"),
        ),
    ),
    TimesView(
        way="by hand",
        hands_on="12 min",
        waiting="3 h 10 min",
        baking="32–35 min",
        total="3 h 54 min to 3 h 57 min",
        segments=(
            _segment("hands_on", "knead", "12 min", "5.1"),
            _segment("waiting", "rise", "1 h 30 min", "38"),
            _segment("waiting", "rise", "40 min", "16.9"),
            _segment("baking", "bake", "20 min", "8.4"),
            _segment("baking", "bake", "12–15 min", "6.3"),
            _segment("waiting", "cool", "1 h", "25.3"),
        ),
    ),
)
_LABEL = LabelView(
    heading="Ingredients",
    ingredients=(
        Run(text="Bread flour ("),
        Run(text="wheat", strong=True),
        Run(text=" flour, malted barley flour), water, butter ("),
        Run(text="milk", strong=True),
        Run(text="), rolled oats, candied lemon peel (lemon peel, sugar), "),
        Run(text="egg", strong=True),
        Run(text=" yolks, "),
        Run(text="egg", strong=True),
        Run(text=" white, honey, salt, yeast."),
    ),
    contains_line=(Run(text="Contains: wheat, milk, egg.", strong=True),),
    may_line=(Run(text="May contain: almonds."),),
    kitchen_line="Made in a kitchen that also handles walnuts and sesame.",
    unfinished="",
    advice="Read the packs that you use.",
    statement="INGREDIENTS",
)

TYPICAL = RecipeView(
    name="honey-oat-braid",
    title="Honey oat braid",
    lead="A soft braided loaf with oats in the crumb and honey on the crust.",
    path="recipes/honey-oat-braid/",
    url=f"{SITE}recipes/honey-oat-braid/",
    on_site=True,
    language="en-US",
    maker="The Corner Oven",
    published=date(2026, 9, 12),
    published_day="12 September 2026",
    updated=date(2026, 9, 20),
    updated_day="20 September 2026",
    revision=2,
    kinds=(PageLink(title="bread", path="kinds/bread/"),),
    photo=None,
    makes="1 loaf",
    portions="14 slices",
    tin="loaf 23 × 13 × 7 cm",
    keeps="3 days in a paper bag; freezes for 2 months",
    facts=(
        Fact(label="Flour", words="430 g"),
        Fact(label="Hydration", words="62.2 %"),
        Fact(label="Salt", words="2.09 %"),
    ),
    parts=(_DOUGH, _FINISH),
    ways=(_CYCLE, _HAND),
    common=_COMMON,
    times=_TIMES,
    cautions=(
        "Do not taste raw dough: flour and eggs are raw.",
        "Take the dough out of the oven before you heat it.",
    ),
    intro=rich("A loaf for a slow day."),
    prose=(),
    label=_LABEL,
    corrections=(
        CorrectionView(
            on=date(2026, 9, 20),
            day="20 September 2026",
            change="Dough, bread flour: 400 g is now 430 g",
            why="Too wet at two bakes in damp weather.",
            because="too wet at two bakes in damp weather",
            film="400 g at 1:25",
            recipe=PageLink(title="Honey oat braid", path="recipes/honey-oat-braid/"),
        ),
    ),
    videos=(),
    links=(),
    paid_words="",
    credits=(),
    used_in=(),
    net_weight="Net Wt 1 lb 12 oz (812 g)",
    statement_of_place="Made in a home kitchen that is not inspected.",
    finished_words="812–817 g baked",
    cards=(),
    ingredient_lines=(),
    iso_times=("", "", ""),
    yield_words=("14 slices", "1 loaf"),
)

TINY = replace(
    TYPICAL,
    name="vanilla-sugar",
    title="Vanilla sugar",
    lead="",
    url=f"{SITE}recipes/vanilla-sugar/",
    makes="1 jar",
    portions="",
    tin="",
    keeps="",
    facts=(),
    parts=(
        PartView(
            name="",
            title="",
            remark="",
            weight="200 g",
            lines=(line("sugar", "200 g", "1 cup"), line("salt", "", "a pinch")),
        ),
    ),
    ways=(),
    common=way(
        "",
        "",
        SectionView(
            title="",
            blocks=(step(1, rich("Stir the @ and the @.", said("sugar", "200 g"), said("salt", "a pinch"))),),
        ),
    ),
    times=(),
    cautions=(),
    label=LabelView(
        heading="Ingredients",
        ingredients=(Run(text="Sugar, vanilla, salt."),),
        contains_line=(),
        may_line=(),
        kitchen_line="",
        unfinished="",
        advice="",
        statement="Ingredients: Sugar, vanilla, salt.",
    ),
    corrections=(),
    net_weight="",
    statement_of_place="",
    finished_words="",
)

LONG_WORD = "Schokoladenbuttercremeüberzugsmassenverarbeitungsanleitungsergänzung"


def _long_lines(count: int) -> tuple[LineView, ...]:
    return tuple(
        line(
            f"ingredient number {number}" if number % 9 else LONG_WORD,
            f"{number * 13} g",
            f"{number} tablespoons plus {number}¾ teaspoons",
            preparation="sifted twice and warmed" if number % 5 == 0 else "",
            percent=f"{number}.5 %",
        )
        for number in range(1, count + 1)
    )


def _long_steps(count: int) -> tuple[BlockView, ...]:
    return tuple(
        step(
            number,
            rich(
                f"Step {number} takes the @ and stirs it into the bowl with patience, turning the bowl by a "
                "quarter after every third stroke, until nothing dry is left. @.",
                said(f"ingredient number {number}", f"{number * 13} g"),
                said(f"rest {number} min", kind="stage"),
            ),
            uses=(use(f"ingredient number {number}", f"{number * 13} g"),),
            stages=(
                StageView(
                    kind="rest", stage="waiting", words=f"{number} min", seconds=(number * 60, number * 60)
                ),
            ),
        )
        for number in range(1, count + 1)
    )


_LINES = _long_lines(40)
LONG = replace(
    TYPICAL,
    name="forty-and-thirty",
    title=f"A feast of forty ingredients and thirty steps with {LONG_WORD}",
    parts=(
        replace(_DOUGH, lines=_LINES[:25]),
        replace(_FINISH, lines=_LINES[25:]),
    ),
    ways=(way("slow", "The slow way", SectionView(title="", blocks=_long_steps(30))),),
    label=replace(
        _LABEL,
        ingredients=tuple(
            Run(text=f"ingredient number {number} (part one, part two), ", strong=number % 4 == 0)
            for number in range(1, 41)
        ),
    ),
)
