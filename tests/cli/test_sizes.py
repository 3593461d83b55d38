"""`tinleaf show` in another size: what is understood, and what each mistake is told."""

from fractions import Fraction

import pytest

from generator.cli.main import main
from generator.formula.wish import Wish
from tests.cli.conftest import Cardboard

Capture = pytest.CaptureFixture[str]


@pytest.mark.usefixtures("content")
@pytest.mark.parametrize(
    ("words", "wish"),
    [
        (["--times", "2"], Wish(times=Fraction(2))),
        (["--times", "1", "1/2"], Wish(times=Fraction(3, 2))),
        (["--times", "½"], Wish(times=Fraction(1, 2))),
        (["--flour", "600", "g"], Wish(flour=Fraction(600))),
        (["--flour", "600g"], Wish(flour=Fraction(600))),
        (["--dough", "1.2", "kg"], Wish(dough=Fraction(1200))),
        (["--dough", "900"], Wish(dough=Fraction(900))),
        (["--portions", "20"], Wish(portions=Fraction(20))),
        (["--tin", "round", "20", "cm"], Wish(tin="round 20 cm")),
        (["--tin", "loaf 9 x 5 x 3 in", "--by", "fill"], Wish(tin="loaf 9 x 5 x 3 in", by="fill")),
    ],
)
def test_a_size_is_understood(pipeline: Cardboard, words: list[str], wish: Wish) -> None:
    assert main(["show", "oat-braid", *words]) == 0
    assert pipeline.wishes == [wish]


@pytest.mark.usefixtures("content", "pipeline")
@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--times", "0"], "argument --times: “0” is not a number above 0 such as 2, 1/2 or 1.5"),
        (["--times", "-1"], "argument --times: “-1” is not a number above 0 such as 2, 1/2 or 1.5"),
        (["--times", "twice"], "argument --times: “twice” is not a number above 0 such as 2, 1/2 or 1.5"),
        (
            ["--flour", "2 cups"],
            "argument --flour: “2 cups” is not a weight above 0 such as 600 g or 1 lb 4 oz",
        ),
        (["--flour", "5", "--times", "2"], "one size at a time: --times and --flour cannot go together"),
    ],
)
def test_a_mistake_ends_with_two_and_says_what_to_type(capsys: Capture, words: list[str], said: str) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["show", "oat-braid", *words])
    assert ended.value.code == 2
    assert capsys.readouterr().err == f"tinleaf show: {said}\nSee `tinleaf show --help`.\n"


@pytest.mark.usefixtures("content")
def test_a_size_that_cannot_be_is_told_with_one(pipeline: Cardboard, capsys: Capture) -> None:
    pipeline.refused = "the recipe does not name its tin. Give it one."
    assert main(["show", "oat-braid", "--tin", "round 20 cm"]) == 1
    assert capsys.readouterr() == (
        "",
        "tinleaf: oat-braid: the recipe does not name its tin. Give it one.\n",
    )
