"""`tinleaf correct` as it is typed: what it says, what it writes, and that nothing is written where it refuses."""

from pathlib import Path

import pytest

from generator.cli.main import main
from generator.history.ledger import PantryChange, Revision, read_ledger
from tests.amend.folder import RECIPE, lay, lay_sample

BRAID, PEEL = "recipes/honey-oat-braid.md", "recipes/candied-lemon-peel.md"
Out = pytest.CaptureFixture[str]


@pytest.fixture
def content(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    root = lay_sample(tmp_path / "content")
    monkeypatch.chdir(root)
    return root


def correct(*words: str, why: str = "Too wet.") -> int:
    reason = ["--why", why] if why else []
    return main(["correct", *words, *reason, "--day", "2026-11-25"])


def bytes_of(root: Path) -> dict[str, bytes]:
    return {str(each.relative_to(root)): each.read_bytes() for each in root.rglob("*") if each.is_file()}


def revisions(root: Path) -> list[tuple[str, int, str, str]]:
    ledger, wrong = read_ledger((root / "ledger.jsonl").read_text("utf-8"))
    assert wrong == ()
    return [
        (each.recipe, each.number, each.cause, each.what)
        for each in ledger.events
        if isinstance(each, Revision)
    ]


def test_the_difference_is_shown_then_written_and_numbered(content: Path, capsys: Out) -> None:
    assert correct("honey-oat-braid", "bread flour", "450 g", "--film", "430 g at 1:25") == 0
    assert (
        capsys.readouterr().out
        == """\
--- recipes/honey-oat-braid.md
+++ recipes/honey-oat-braid.md
@@ -13,3 +13,3 @@
     - 2 egg yolks
-    - 430 g (3 1/3 cups) bread flour
+    - 450 g (3 1/2 cups) bread flour
     - 50 g rolled oats
@@ -42,2 +42,6 @@
     film: 400 g at 1:25
+  - on: 2026-11-25
+    change: dough/bread flour 430 g -> 450 g
+    why: Too wet.
+    film: 430 g at 1:25
 ---
dough/bread flour 430 g -> 450 g
honey-oat-braid: revision 3
"""
    )
    assert revisions(content) == [
        ("candied-lemon-peel", 1, "first", ""),
        ("honey-oat-braid", 2, "first", ""),
        ("honey-oat-braid", 3, "correction", "dough/bread flour 430 g -> 450 g"),
    ]


def test_a_dry_run_writes_nothing(content: Path, capsys: Out) -> None:
    before = bytes_of(content)
    assert correct("honey-oat-braid", "water", "250 g", "--dry-run") == 0
    out = capsys.readouterr().out
    assert "+    - 250 g water, cool\n" in out
    assert out.endswith("nothing was written\n")
    assert bytes_of(content) == before


def test_quotes_may_be_left_out(content: Path) -> None:
    assert correct("honey-oat-braid", "bread", "flour", "450", "g") == 0
    assert correct("honey-oat-braid", "oven", "350", "F", "340", "F") == 0
    assert [each[3] for each in revisions(content) if each[2] == "correction"] == [
        "dough/bread flour 430 g -> 450 g",
        "oven 350 F -> 340 F",
    ]


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        (["bake", "20 min", "25 min"], "{bake 25 min} at {oven 350 F}"),
        (["core", "90 C"], "{core 90 C}"),
        (["by hand/rise", "80 min"], "{knead 12 min}. Work in the {candied lemon peel}. {rise 80 min}"),
        (["time", "10 min"], "After {10 min} look"),
        (["makes", "2 small loaves"], "makes: 2 small loaves\n"),
        (["keeps", "2 days: in paper"], 'keeps: "2 days: in paper"\n'),
        (["bakes_off", "11 %"], "bakes_off: 11 %\n"),
        (["finish/honey", "30-35 g"], "- 30-35 g honey\n"),
        (["candied lemon peel", "50 g"], "{line: 50 g candied lemon peel, recipe: candied-lemon-peel}"),
    ],
)
def test_what_else_can_be_corrected(content: Path, words: list[str], expected: str) -> None:
    assert correct("honey-oat-braid", *words) == 0
    assert expected in (content / BRAID).read_text("utf-8")


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["honey-oat-braid", "tabel salt", "1 tsp"], "Did you mean “table salt” or “dough/table salt”?"),
        (["honey-oat-braid", "water", "240 g"], "water is 240 g already"),
        (["honey-oat-braid", "egg yolks", "50 g"], "“50 g” is another kind of amount than “2 egg yolks”"),
        (["honey-oat-braid", "oven", "340 F"], "oven stands there 2 times: 350 F in line 59, 325 F in line 59"),
        (["honey-oat-braid", "oven", "350 F", "20 min"], "“20 min” is another kind of value than oven has"),
        (["honey-oat-braid", "oven", "350 F", "350 F"], "oven is 350 F already"),
        (["honey-oat-braid", "rise", "9 h", "2 h"], "rise is nowhere “9 h” in honey-oat-braid"),
        (["honey-oat-braid", "tin", "loaf 23 x 13 x 7 cm"], "“tin” is “loaf 23 x 13 x 7 cm” already"),
        (["honey-oat-braid", "weighs", "800 g"], "has no “weighs:” that could be corrected"),
        (["honey-oat-braid", "bakes_off", "200 %"], "error[S067] “200 %” is not a percentage"),
        (["honey-oat-brad", "water", "250 g"], "Did you mean “honey-oat-braid”?"),
        (["honey-oat-braid", "water", "250 g", "--on", "2026-11-26"], "2026-11-26 lies ahead: today is 2026-11-25"),
        (["honey-oat-braid", "water", "250 g", "--on", "2026-09-19"], "before the last change, of 2026-09-20"),
        (["honey-oat-braid", "water", "250 g", "--on", "2026-09-01"], "before the bake was published, on 2026-09-12"),
        (["honey-oat-braid", "water", "250 g", "--from", "2026-09-19"], "there is no bake record “2026-09-19”"),
        (["honey-oat-braid", "--undo", "--on", "2026-11-26"], "lies ahead"),
        (["--pantry", "bread flou", "cup", "130 g"], "Did you mean “bread flour”?"),
        (["--pantry", "bread flour", "cups", "130 g"], "a pantry row has no “cups”\ntinleaf: Did you mean “cup”?"),
        (["--pantry", "bread flour", "cup", "a lot"], "error[P006] “a lot” is not a weight"),
        (["--pantry", "bread flour", "contains", "wheat, barlex"], "P005] “barlex” is not an allergen known here"),
        (["--pantry", "bread flour", "cup", "128 g"], "bread flour cup is “128 g” already"),
    ],
)  # fmt: skip
def test_what_cannot_be_is_told_and_nothing_is_written(
    content: Path, capsys: Out, words: list[str], said: str
) -> None:
    before = bytes_of(content)
    assert correct(*words) == 1
    assert said in capsys.readouterr().err
    assert bytes_of(content) == before


@pytest.mark.parametrize(
    ("words", "why", "said"),
    [
        (["honey-oat-braid", "water", "250 g"], "", "--why is needed"),
        (["honey-oat-braid", "water", "250 g"], "  ", "--why is empty"),
        (["honey-oat-braid", "water"], "x", "name the RECIPE, WHAT is to be corrected, and its NEW amount"),
        (["--pantry", "bread flour", "cup"], "x", "name the ROW, the KEY and what it says NOW"),
        (["honey-oat-braid", "--undo", "--as-it-stands"], "x", "cannot go together"),
        (["honey-oat-braid", "water", "--undo"], "x", "name one RECIPE"),
        (["honey-oat-braid", "water", "1 g", "--change", "y"], "x", "--change goes with --as-it-stands"),
        (["honey-oat-braid", "oven", "1 F", "2 F", "--line", "x"], "x", "“x” is not the number of a line"),
    ],
)
def test_a_mistake_on_the_command_line(
    content: Path, capsys: Out, words: list[str], why: str, said: str
) -> None:
    with pytest.raises(SystemExit) as ended:
        correct(*words, why=why)
    assert ended.value.code == 2
    assert said in capsys.readouterr().err


def test_a_name_that_stands_twice_asks_which(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Out
) -> None:
    twice = RECIPE.replace("formula:\n", "formula:\n  dough:\n").replace("  - ", "    - ")
    twice = twice.replace("    - 10 g table salt\n", "    - 10 g table salt\n  wash:\n    - 5 g water\n")
    twice = twice.replace("{water}", "{dough/water} {wash/water}")
    monkeypatch.chdir(lay(tmp_path / "content", plain_loaf=twice))
    assert correct("plain-loaf", "water", "310 g") == 1
    assert "tinleaf: Type “dough/water” or “wash/water”." in capsys.readouterr().err
    assert correct("plain-loaf", "wash/water", "6 g") == 0
    assert "    - 6 g water\n" in Path("recipes/plain-loaf.md").read_text("utf-8")


def test_a_correction_that_breaks_the_formula_is_not_made(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Out
) -> None:
    root = lay(
        tmp_path / "content", plain_loaf=RECIPE.replace("the {water}", "{water: 280 g} and {water: rest}")
    )
    monkeypatch.chdir(root)
    before = bytes_of(root)
    assert correct("plain-loaf", "water", "250 g") == 1
    err = capsys.readouterr().err
    assert "nothing was changed, because this would be wrong afterwards:" in err
    assert "error[R021]" in err
    assert bytes_of(root) == before


def test_plain_text_that_states_the_old_amount_is_pointed_out(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: Out
) -> None:
    text = (
        RECIPE.replace("## Method", "I began with 0.3 kg of water.\n\n## Method")
        + "\n## Notes\nOr use 1¼ cups.\n"
    )
    root = lay(tmp_path / "content", plain_loaf=text)
    (root / "journal").mkdir()
    (root / "journal/wet.md").write_text("---\ntitle: Wet\nbakes: [plain-loaf]\n---\nAll 300 g went in.\n")
    (root / "journal/other.md").write_text("---\ntitle: Other\n---\nAll 300 g went in.\n")
    monkeypatch.chdir(root)
    assert correct("plain-loaf", "water", "310 g") == 0
    told = [line for line in capsys.readouterr().err.splitlines() if "C010" in line]
    assert told == [
        "journal/wet.md:5:5: warning[C010] plain text still says “300 g”",
        "recipes/plain-loaf.md:14:14: warning[C010] plain text still says “0.3 kg”",
        "recipes/plain-loaf.md:20:8: warning[C010] plain text still says “1¼ cups”",
    ]


def test_a_component_raises_what_is_made_with_it(content: Path, capsys: Out) -> None:
    assert correct("candied-lemon-peel", "lemon peel", "160 g") == 0
    assert capsys.readouterr().out.endswith(
        "lemon peel 150 g -> 160 g\n"
        "candied-lemon-peel: revision 2\n"
        "honey-oat-braid: revision 3, because of candied-lemon-peel: lemon peel 150 g -> 160 g\n"
    )
    assert [each[:3] for each in revisions(content)] == [
        ("candied-lemon-peel", 1, "first"),
        ("honey-oat-braid", 2, "first"),
        ("candied-lemon-peel", 2, "correction"),
        ("honey-oat-braid", 3, "component"),
    ]


def test_a_fact_of_the_pantry_raises_every_bake_that_it_changes(content: Path, capsys: Out) -> None:
    before = (content / "pantry.yaml").read_bytes()
    assert correct("--pantry", "bread flour", "contains", "wheat, barley, soy", why="A new pack.") == 0
    out = capsys.readouterr().out
    assert "bread flour contains wheat, barley -> wheat, barley, soy\nhoney-oat-braid: revision 3" in out
    assert (content / "pantry.yaml").read_bytes() == before.replace(
        b"[wheat, barley]", b"[wheat, barley, soy]"
    )
    events = read_ledger((content / "ledger.jsonl").read_text("utf-8"))[0].events
    texts = [each.text.encode() for each in events if isinstance(each, PantryChange)]
    assert texts == [before, (content / "pantry.yaml").read_bytes()]
    assert correct("--pantry", "--undo", why="") == 0
    assert (content / "pantry.yaml").read_bytes() == before
    assert correct("--pantry", "--undo", why="") == 1


@pytest.mark.parametrize(
    ("row", "key", "new", "expected"),
    [
        ("bread flour", "tbsp", "8 g", b"# when the pack was last read\r\n  tbsp: 8 g\r\nb:"),
        ("b", "contains", "milk, egg", b"b: {is: butter, contains: [milk, egg]}"),
        ("b", "is", "salted butter", b"b: {is: salted butter, contains: [milk]}"),
        ("c", "may_contain", "soy, peanut", b"  may_contain:\r\n    - soy\r\n    - peanut  # both\r\nd:"),
        ("d", "contains", "none", b"d:\r\n  contains: []"),
        ("bread flour", "label", "Flour: wheat", b'  label: "Flour: wheat"\r\n'),
    ],
)
def test_a_pantry_in_any_layout(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, row: str, key: str, new: str, expected: bytes
) -> None:
    text = (
        "\ufeffbread flour:\n  label: Flour (wheat)\n  checked: 2026-09-01  # when the pack was last read\n"
        "b: {is: butter, contains: [milk]}\nc:\n  is: sugar\n  may_contain:\n    - soy  # both\nd:\n"
    )
    root = lay(tmp_path / "content", plain_loaf=RECIPE)
    (root / "pantry.yaml").write_bytes(text.replace("\n", "\r\n").encode())
    monkeypatch.chdir(root)
    assert correct("--pantry", row, key, new) == 0
    assert expected in (root / "pantry.yaml").read_bytes()


def test_a_read_only_file_and_a_full_disk(
    content: Path, monkeypatch: pytest.MonkeyPatch, capsys: Out
) -> None:
    before = bytes_of(content)
    (content / BRAID).chmod(0o444)
    assert correct("honey-oat-braid", "water", "250 g") == 1
    assert "error[W002] recipes/honey-oat-braid.md is read-only" in capsys.readouterr().err
    (content / BRAID).chmod(0o644)

    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("generator.source.write.os.fsync", full)
    assert correct("honey-oat-braid", "water", "250 g") == 1
    assert "error[W002] this cannot be written: No space left on device" in capsys.readouterr().err
    assert bytes_of(content) == before


def test_a_ledger_edited_into_nonsense_is_named_and_nothing_is_added_to_it(
    content: Path, capsys: Out
) -> None:
    (content / "ledger.jsonl").write_text('{"event": "revision", "recipe"\n')
    before = bytes_of(content)
    assert correct("honey-oat-braid", "water", "250 g") == 1
    err = capsys.readouterr().err
    assert "ledger.jsonl:1:" in err
    assert "nothing was changed: the ledger is to be mended first" in err
    assert bytes_of(content) == before
