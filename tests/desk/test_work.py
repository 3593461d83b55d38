"""The work at the desk: entries that arrive once, files that are never written over, scripts that stay text."""

import re
import shutil
import signal
import socket
from pathlib import Path
from typing import Any

import pytest

from generator.amend.form import fields_of, with_fields
from generator.amend.retype import retyped_bytes, shown_text
from generator.cli.main import main
from generator.desk.changes import base_of
from generator.source import write
from tests.desk.served import DAY, Served, viewing

SCRIPT = "<script>alert(1)</script><img src=x onerror=alert(2)>\"'"


def test_the_publication_and_the_desk_are_served(served: Served, recipe: Path) -> None:
    home, desk = served.ask("/"), served.ask("/desk/")
    assert home.status == desk.status == 200
    assert "/desk/files/live.js" in home.text
    assert f"/desk/bench/{recipe.stem}" in desk.text
    assert served.ask(f"/recipes/{recipe.stem}/").status == 200
    assert served.ask(f"/recipes/{recipe.stem}").status == 307
    assert served.ask(f"/recipes/{recipe.stem}/recipe.json").values["name"] == recipe.stem
    assert "flour" in served.ask(f"/desk/out/{recipe.stem}/description.txt").text
    for path in (f"edit/{recipe.stem}", f"bench/{recipe.stem}?size=2", "pantry", "copies", "bring"):
        assert served.ask(f"/desk/{path}").status == 200


def test_a_mistake_is_told_and_the_last_good_page_stays(served: Served, recipe: Path) -> None:
    before, address = recipe.read_bytes(), f"/recipes/{recipe.stem}/"
    good = served.ask(address).body
    other = recipe.with_name("a-plain-loaf.md")
    other.write_bytes(before.replace(b"title: ", b"title: A plain loaf like ", 1))
    try:
        recipe.write_bytes(before.replace(b"formula:", b"formulas:", 1))
        state = served.ask("/desk/state.json").values
        assert any(each["path"] == f"recipes/{recipe.name}" for each in state["errors"])
        assert "the last good pages are shown" in state["head"]
        assert served.ask(address).body == good
        bakes = re.findall(r'class="door" href="/desk/bench/([^"]+)"', served.ask("/desk/").text)
        assert bakes[:2] == [recipe.stem, other.stem]
    finally:
        other.unlink()
        recipe.write_bytes(before)
    assert served.ask("/desk/state.json").values["errors"] == []


def test_entries_arrive_once_however_often_they_are_sent(served: Served, recipe: Path) -> None:
    items = [
        each["item"] for each in served.ask(f"/recipes/{recipe.stem}/recipe.json").values["parts"][0]["lines"]
    ]
    entries = [
        {"id": "entry-0001", "kind": "start", "text": ""},
        {"id": "entry-0002", "kind": "add", "text": f"10 g {items[0]}, 5 min in"},
        {"id": "entry-0003", "kind": "note", "text": SCRIPT},
        {"id": "entry-0004", "kind": "add", "text": "a lot of moonlight"},
    ]
    path = f"/desk/bench/{recipe.stem}/entries"
    first = served.send(path, {"day": DAY, "entries": entries}).values
    assert sorted(first["done"]) == ["entry-0001", "entry-0002", "entry-0003"]
    assert [id for id, _ in first["refused"]] == ["entry-0004"]
    again = served.send(path, {"day": DAY, "entries": entries[:3]}).values
    assert sorted(again["done"]) == ["entry-0001", "entry-0002", "entry-0003"]
    record = (served.root / f"bakes/{DAY}-{recipe.stem}.yaml").read_text()
    assert record.count(f"what: {items[0]}, amount: 10 g, when: 5 min in") == 1
    assert record.count("alert(1)") == 1
    total = served.ask(f"/desk/bench/{recipe.stem}/sum.json?day={DAY}").values
    assert total["ok"]
    assert f"/{items[0]}" in " ".join(total["offers"]) or items[0] in " ".join(total["offers"])


def test_an_addition_is_taken_back_once_and_only_where_it_is(served: Served, recipe: Path) -> None:
    item = served.ask(f"/recipes/{recipe.stem}/recipe.json").values["parts"][0]["lines"][1]["item"]
    path, said = f"/desk/bench/{recipe.stem}/entries", f"7 g {item}, by mistake"
    record = served.root / f"bakes/{DAY}-{recipe.stem}.yaml"

    def send(id: str, kind: str) -> Any:
        return served.send(path, {"day": DAY, "entries": [{"id": id, "kind": kind, "text": said}]}).values

    assert send("taken-0001", "add")["done"] == ["taken-0001"]
    before = record.read_bytes()
    assert send("taken-0002", "add")["done"] == ["taken-0002"]
    for _ in range(2):
        assert send("taken-0003", "drop")["done"] == ["taken-0003"]
    assert record.read_bytes() == before
    assert send("taken-0004", "drop")["done"] == ["taken-0004"]
    assert b"by mistake" not in record.read_bytes()
    ((id, why),) = send("taken-0005", "drop")["refused"]
    assert (id, "no such addition" in why) == ("taken-0005", True)


def test_letters_are_kept_by_the_browser_and_nothing_else_is(served: Served) -> None:
    """Without its letters at hand every page would begin in others."""
    kept = [served.ask(path).headers["cache-control"] for path in ("/leaf/vollkorn.woff2", "/", "/desk/")]
    assert kept == ["private, max-age=3600", "no-store", "no-store"]


@pytest.mark.parametrize("kind", ["note", "room", "weather", "nothing", "add", "drop"])
def test_odd_entries_break_nothing(served: Served, recipe: Path, kind: str) -> None:
    path = f"/desk/bench/{recipe.stem}/entries"
    for text in (SCRIPT, "\u202ex", "a: b\n- c", "'\"{}[]", "x" * 1999):
        entry = {"id": f"odd-{kind}-{abs(hash(text))}", "kind": kind, "text": text}
        assert served.send(path, {"day": DAY, "entries": [entry]}).status in (200, 400)
    assert served.ask("/desk/state.json").values["errors"] == []
    assert served.send(path, {"day": "2026-13-01", "entries": []}).status == 400


def test_two_editors_at_once_lose_nothing(served: Served, recipe: Path) -> None:
    before = recipe.read_bytes()
    text, path = shown_text(before) or "", f"/desk/edit/{recipe.stem}/save"
    try:
        mine = served.send(path, {"base": base_of(before), "text": text + "\nMine.\n"}).values
        theirs = served.send(path, {"base": base_of(before), "text": text + "\nTheirs.\n"}).values
        assert mine["ok"]
        assert not theirs["ok"]
        assert "-Mine." in theirs["difference"]
        assert "+Theirs." in theirs["difference"]
        assert "Mine." in recipe.read_text()
        assert "Theirs." not in recipe.read_text()
        late = served.send(
            path.replace("save", "fields"), {"base": base_of(before), "fields": {"title": "X"}}
        )
        assert late.values["meanwhile"]
    finally:
        recipe.write_bytes(before)


def test_scripts_in_text_fields_stay_text(served: Served, recipe: Path) -> None:
    before, base = recipe.read_bytes(), base_of(recipe.read_bytes())
    wanted = dict.fromkeys(("title", "lead", "makes", "keeps"), SCRIPT)
    try:
        answer = served.send(f"/desk/edit/{recipe.stem}/fields", {"base": base, "fields": wanted})
        assert answer.values["ok"], answer.text
        for path in ("/desk/", f"/desk/edit/{recipe.stem}", f"/desk/bench/{recipe.stem}", "/desk/copies"):
            page = served.ask(path).text
            assert "<script>alert" not in page
            assert "<img src=x" not in page
    finally:
        recipe.write_bytes(before)
    pasted = served.send(
        "/desk/bring", {"text": f"{SCRIPT}\n\nIngredients\n200 g flour {SCRIPT}\n2 eggs\n\n1. Mix {SCRIPT}."}
    )
    for id in pasted.values["ids"]:
        page = served.ask(f"/desk/review/{id}").text
        assert "<script>alert" not in page
        assert "<img src=x" not in page


def test_scripts_in_every_other_text_field_stay_text(served: Served, recipe: Path) -> None:
    """All that a person can type at the desk, and all pages that may show it."""
    before, name, day = recipe.read_bytes(), recipe.stem, "2026-11-22"
    kinds = ("note", "next", "weather", "room", "time", "pack", "add", "left", "dough", "baked", "start")
    entries = [{"id": f"script-{kind}", "kind": kind, "text": SCRIPT} for kind in kinds]
    pages = ["/", "/desk/", "/desk/copies", "/desk/pantry", f"/desk/edit/{name}", f"/recipes/{name}/"]
    pages += [f"/desk/bench/{name}", f"/desk/bench/{name}?size=%3Cscript%3Ealert(1)%3C/script%3E"]
    ledger = served.root / "ledger.jsonl"
    told = ledger.read_bytes() if ledger.exists() else None
    try:
        served.send(f"/desk/bench/{name}/entries", {"day": day, "entries": entries})
        served.send("/desk/copies/mark", {"recipe": name, "place": "card", "to": SCRIPT})
        served.send("/desk/pantry/read", {"row": SCRIPT})
        served.send(f"/desk/edit/{name}/record", {"why": SCRIPT})
        fields = dict.fromkeys(fields_of(f"recipes/{name}.md", before), SCRIPT)
        for key, value in fields.items():
            now = {"base": base_of(recipe.read_bytes()), "fields": {key: value}}
            assert served.send(f"/desk/edit/{name}/fields", now).status == 200
            for path in pages[:2]:
                assert "<script>alert" not in served.ask(path).text
        for path in pages:
            page = served.ask(path).text
            assert "<script>alert" not in page, path
            assert "<img src=x" not in page, path
    finally:
        recipe.write_bytes(before)
        ledger.unlink(missing_ok=True) if told is None else ledger.write_bytes(told)
        (served.root / f"bakes/{day}-{name}.yaml").unlink(missing_ok=True)


def test_saving_keeps_every_byte_that_was_not_changed() -> None:
    before = "\ufeffone\r\ntwo\nthree\r\nfour".encode()
    shown = shown_text(before)
    assert shown == "one\ntwo\nthree\nfour"
    assert retyped_bytes(before, shown) == before
    assert retyped_bytes(before, "one\nTWO\nthree\nfour") == "\ufeffone\r\nTWO\nthree\r\nfour".encode()
    assert retyped_bytes(before, "one\nnew\ntwo\nthree\nfour\n") == (
        "\ufeffone\r\nnew\r\ntwo\nthree\r\nfour\r\n".encode()
    )
    assert retyped_bytes(b"", "a\nb") == b"a\nb"


def test_a_form_replaces_its_own_words_only() -> None:
    before = b"---\ntitle: 'Mill loaf' # mine\nlead: x\nformula:\n  - 100 g flour\n---\nText\n"
    after = with_fields("recipes/a.md", before, {"title": "It's: new", "tin": "loaf 23 x 13 x 7 cm"})
    assert after == (
        b"---\ntitle: 'It''s: new' # mine\nlead: x\nformula:\n  - 100 g flour\ntin: loaf 23 x 13 x 7 cm\n---\nText\n"
    )
    assert fields_of("recipes/a.md", after)["tin"] == "loaf 23 x 13 x 7 cm"
    assert with_fields("recipes/a.md", before, {}) == before


def test_a_full_disk_loses_nothing(
    served: Served, recipe: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    from generator.desk.changes import save_text
    from generator.desk.entries import Entry, enter
    from generator.desk.state import Desk

    root = tmp_path / "baking"
    shutil.copytree(served.root, root)
    before = {path: path.read_bytes() for path in root.rglob("*") if path.is_file()}
    desk = Desk(root)

    def full(*_: object) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(write, "_lay", full)
    data = (root / "recipes" / recipe.name).read_bytes()
    saved = save_text(desk, f"recipes/{recipe.name}", base=base_of(data), typed="changed")
    day = desk.now().result.setting.day
    told = enter(desk, recipe.stem, day, (Entry(id="full-0001", kind="note", text="x"),))
    assert not saved["ok"]
    assert "No space left" in str(saved["told"])
    assert told["done"] == []
    assert "No space left" in str(told["refused"])
    assert {path: path.read_bytes() for path in root.rglob("*") if path.is_file()} == before


def test_a_port_that_is_taken_is_told(served: Served, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["view", str(served.root), "--port", str(served.port)]) == 1
    assert f"port {served.port} cannot be used" in capsys.readouterr().err
    with pytest.raises(SystemExit) as ended:
        main(["view", str(served.root), "--port", "high"])
    assert ended.value.code == 2


@pytest.mark.long
def test_it_ends_while_pages_listen(served: Served) -> None:
    with viewing(served.root) as other, socket.create_connection(("127.0.0.1", other.port)) as page:
        page.sendall(f"GET /desk/events HTTP/1.1\r\nHost: 127.0.0.1:{other.port}\r\n\r\n".encode())
        assert b"200" in page.recv(100)


@pytest.mark.long
def test_bring_review_shows_what_it_found(served: Served, tmp_path: Path) -> None:
    old = tmp_path / "old.txt"
    old.write_text("Oat bar\n\nIngredients\n200 g rolled oats\n100 g honey\n\n1. Mix the oats and honey.\n")
    with viewing(
        served.root, command=("bring", str(old), "--review", "--content"), stop=signal.SIGINT
    ) as other:
        waiting = other.ask("/desk/bring").text
        assert ">Oat bar</a>" in waiting
    assert not (served.root / "recipes/oat-bar.md").exists()


def test_bring_review_does_not_go_with_a_dry_run(capsys: pytest.CaptureFixture[str]) -> None:
    for more in (["x.txt", "--review", "--dry-run"], ["-", "--review"], ["x.txt", "--port", "9000"]):
        with pytest.raises(SystemExit) as ended:
            main(["bring", *more])
        assert ended.value.code == 2


def test_of_a_scaled_bake_sum_and_correction_are_those_of_the_recipe(served: Served, recipe: Path) -> None:
    lines = served.ask(f"/recipes/{recipe.stem}/recipe.json").values["parts"][0]["lines"]
    item, day, path = lines[0]["item"], "2026-11-20", f"/desk/bench/{recipe.stem}/entries"
    entries = [
        {"id": "scaled-0001", "kind": "start", "text": "2"},
        {"id": "scaled-0002", "kind": "add", "text": f"20 g {item}"},
    ]
    assert sorted(served.send(path, {"day": day, "entries": entries}).values["done"]) == [
        "scaled-0001",
        "scaled-0002",
    ]
    assert "size: 2" in (served.root / f"bakes/{day}-{recipe.stem}.yaml").read_text()
    total = served.ask(f"/desk/bench/{recipe.stem}/sum.json?day={day}").values
    assert "+10 g" in total["summary"]
    assert "It took 10 g more" in total["offers"][0]
    assert any("Baked 2 times the recipe" in each for each in total["remarks"])
    odd = {"id": "scaled-0003", "kind": "start", "text": "a bathtub"}
    refused = served.send(path, {"day": "2026-11-21", "entries": [odd]}).values
    assert [id for id, _ in refused["refused"]] == ["scaled-0003"]


def test_only_an_offered_correction_is_carried_out_and_by_its_values(served: Served, recipe: Path) -> None:
    lines = served.ask(f"/recipes/{recipe.stem}/recipe.json").values["parts"][0]["lines"]
    item, before = lines[0]["item"], recipe.read_bytes()
    ledger = served.root / "ledger.jsonl"
    told = ledger.read_bytes() if ledger.exists() else None
    entry = {"id": "offered-0001", "kind": "add", "text": f"20 g {item}"}
    served.send(f"/desk/bench/{recipe.stem}/entries", {"day": DAY, "entries": [entry]})
    total = served.ask(f"/desk/bench/{recipe.stem}/sum.json?day={DAY}").values
    offered = next(each for each in total["offered"] if each["what"].endswith(item))
    path = f"/desk/correct/{recipe.stem}"
    try:
        for other in ({"new": "9000 g"}, {"what": "salt; rm"}, {"bake": "bakes/none.yaml"}, {"why": SCRIPT}):
            answer = served.send(path, {**offered, **other}).values
            assert answer["told"] == ["this is no correction that was offered"]
        assert recipe.read_bytes() == before
        done = served.send(path, offered).values
        assert done["ok"], done
        assert offered["new"] in recipe.read_text()
    finally:
        recipe.write_bytes(before)
        ledger.unlink(missing_ok=True) if told is None else ledger.write_bytes(told)


def test_timers_of_two_sections_with_the_same_step_are_told_apart(served: Served) -> None:
    recipe = served.root / "recipes" / "two-sections.md"
    recipe.write_text(
        "---\ntitle: Two sections\nkinds: [bread]\nformula:\n  - 500 g bread flour\n  - 300 g water\n---\n"
        "## Method\n### Evening\n1. Mix the {bread flour} and {water}. {rest 10 min}\n"
        "### Morning\n1. Shape it. {rest 20 min}\n"
    )
    try:
        page = served.ask("/desk/bench/two-sections").text
        assert re.findall(r'data-timer="([^"]+)"', page) == ["rest, step 1, Evening", "rest, step 1, Morning"]
    finally:
        recipe.unlink()
