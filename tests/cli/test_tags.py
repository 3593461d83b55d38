"""`tinleaf tags` over the real pipeline: what is printed, where, and what the maker is told."""

from io import BytesIO
from pathlib import Path

import pytest
from pypdf import PdfReader

from generator.build.manifest import NAME as MANIFEST
from generator.cli.main import main

Capture = pytest.CaptureFixture[str]
SITE = """\
title: A shelf
maker: Wynne
url: https://shelf.example/
region: US
statement: Made in a home kitchen that is not inspected.
statement_on: 2026-01-05
"""
PANTRY = """\
bread flour:
  label: Bread flour (wheat flour)
  contains: [wheat]
  checked: 2026-09-01
strong flour of the mill:
  is: bread flour
  label: Strong flour (wheat flour, malted barley flour, sesame)
  contains: [wheat, barley, sesame]
  checked: 2026-12-01
"""
RECIPE = """\
---
title: Mill loaf
published: 2026-01-01
keeps: 3 days in a bag
bakes_off: 12 %
formula:
  - 500 g bread flour
  - 300 g water
  - 10 g table salt
  - 20 g honey
---
## Method
1. Mix the {bread flour}, {water}, {table salt} and {honey}. {bake 30 min} at {oven 350 F}.
"""
RECORD = """\
recipe: mill-loaf
day: 2026-12-20
packs: [strong flour of the mill]
baked: 725.9 g
"""
DAY = ["--day", "2026-12-24"]


@pytest.fixture
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    content = tmp_path / "content"
    for folder in ("recipes", "bakes"):
        (content / folder).mkdir(parents=True)
    (content / "site.yaml").write_text(SITE)
    (content / "pantry.yaml").write_text(PANTRY)
    (content / "recipes" / "mill-loaf.md").write_text(RECIPE)
    monkeypatch.chdir(tmp_path)
    return tmp_path


def record(kitchen: Path, text: str = RECORD, name: str = "2026-12-20-mill-loaf") -> None:
    (kitchen / "content" / "bakes" / f"{name}.yaml").write_text(text)


def printed(path: Path) -> str:
    text = "".join(page.extract_text() for page in PdfReader(BytesIO(path.read_bytes())).pages)
    return "".join(text.split())


def test_without_a_record_the_tag_says_which_packs_it_assumes(kitchen: Path, capsys: Capture) -> None:
    assert main(["tags", "mill-loaf", "--size", "card", *DAY]) == 0
    told = capsys.readouterr()
    assert told.out == "output/desk/mill-loaf/tags-for.pdf: 4 tags on 1 page\n"
    text = printed(kitchen / "output/desk/mill-loaf/tags-for.pdf")
    assert text.count("Packsassumed,aslastread:breadflour(Sep1,2026).") == 4
    assert text.count("Bakedon") == 4
    assert "BakedonDecember" not in text
    assert "There is no bake record" in told.err
    assert "Check with your local authority" in told.err
    assert "dated January 5, 2026," in told.err
    assert "localauthority" not in text
    assert text.count("Madeinahomekitchenthatisnotinspected.") == 4


def test_the_record_gives_packs_day_and_weight(kitchen: Path, capsys: Capture) -> None:
    record(kitchen)
    assert main(["tags", "mill-loaf", "--size", "card", *DAY]) == 0
    text = printed(kitchen / "output/desk/mill-loaf/tags-for.pdf")
    assert text.count("Contains:wheat,sesame") == 4
    assert text.count("Netwt1lb9.5oz(725g)") == 4
    assert text.count("BakedonDecember20,2026") == text.count("BestbeforeDecember23,2026") == 4
    assert text.count("Packsoftheday:strongflourofthemill.") == 4
    assert text.count("Honeyisnotforbabies") == 4
    assert "bakes/2026-12-20-mill-loaf.yaml" in capsys.readouterr().err


def test_a_day_is_chosen_and_one_that_is_not_there_is_told(kitchen: Path, capsys: Capture) -> None:
    record(kitchen)
    record(kitchen, "baked: 700 g\n", "2026-12-01-mill-loaf")
    assert main(["tags", "mill-loaf", "--bake", "2026-12-01", "--size", "card", *DAY]) == 0
    assert "(700g)" in printed(kitchen / "output/desk/mill-loaf/tags-for.pdf")
    capsys.readouterr()
    assert main(["tags", "mill-loaf", "--bake", "2026-12-02", *DAY]) == 1
    assert capsys.readouterr().err == (
        "tinleaf: there is no bake record of mill-loaf on 2026-12-02. "
        "There are records of 2026-12-01, 2026-12-20.\n"
    )


def test_a_mistake_in_a_record_keeps_the_tags_back(kitchen: Path, capsys: Capture) -> None:
    record(kitchen, "packs: [strong flower]\n")
    assert main(["tags", "mill-loaf", *DAY]) == 1
    assert "content/bakes/2026-12-20-mill-loaf.yaml:1:9: error[K002]" in capsys.readouterr().err
    assert not (kitchen / "output").exists()
    assert main(["check", *DAY]) == 1


def test_each_person_gets_a_tag(kitchen: Path, capsys: Capture) -> None:
    names = kitchen / "names.csv"
    names.write_bytes("\ufeffto;from;note\r\nÞórunn Łukasiewicz;Wynne;For you\r\nOtso;;\r\n".encode())
    assert main(["tags", "mill-loaf", "--for", "names.csv", "--output", "gifts.pdf", *DAY]) == 0
    text = printed(kitchen / "gifts.pdf")
    assert text.count("ToÞórunnŁukasiewicz") == text.count("FromWynne") == text.count("ToOtso") == 1
    assert "2 tags" in capsys.readouterr().out
    assert not (kitchen / "output").exists()


def test_mistakes_of_the_list_are_told_at_their_place(kitchen: Path, capsys: Capture) -> None:
    (kitchen / "names.csv").write_text("to,form\n漢字,Me\n")
    assert main(["tags", "mill-loaf", "--for", "names.csv", *DAY]) == 1
    told = capsys.readouterr().err
    assert "names.csv:1:4: error[G002] there is no column “form”" in told
    assert "names.csv:2:1: error[G009] this row has characters that cannot be printed: U+5B57, U+6F22" in told
    assert not (kitchen / "output").exists()


def test_a_make_lets_the_tags_stand_and_the_other_way_round(kitchen: Path, capsys: Capture) -> None:
    assert main(["tags", "mill-loaf", "--size", "card", *DAY]) == 0
    before = (kitchen / "output/desk/mill-loaf/tags-for.pdf").read_bytes()
    assert (kitchen / "output" / MANIFEST).exists()
    assert main(["make", *DAY, "--jobs", "1"]) == 0
    assert (kitchen / "output/desk/mill-loaf/tags-for.pdf").read_bytes() == before
    assert "assumed" in (kitchen / "output/desk/mill-loaf/tags.txt").read_text()
    assert main(["tags", "mill-loaf", "--size", "card", *DAY]) == 0


@pytest.mark.parametrize(
    ("words", "message"),
    [
        (["--for", "none.csv"], "there is no file none.csv"),
        (["--size", "huge"], "invalid choice: 'huge'"),
        (["--output", "tags.txt"], "“tags.txt” does not end in .pdf"),
        (["--bake", "yesterday"], "“yesterday” is not a date such as 2026-09-12"),
    ],
)
def test_mistakes_on_the_command_line_exit_2(
    kitchen: Path, capsys: Capture, words: list[str], message: str
) -> None:
    with pytest.raises(SystemExit) as ended:
        main(["tags", "mill-loaf", *words])
    assert ended.value.code == 2
    assert message in capsys.readouterr().err


def test_no_other_file_is_written_over(kitchen: Path, capsys: Capture) -> None:
    (kitchen / "letter.pdf").write_text("a letter")
    assert main(["tags", "mill-loaf", "--output", "letter.pdf", *DAY]) == 1
    assert (kitchen / "letter.pdf").read_text() == "a letter"
    assert "letter.pdf is no PDF file, and is not written over" in capsys.readouterr().err
