"""Answers that change something: each reads its request, and hands it to what the commands use."""

import asyncio
import re
from datetime import date
from functools import partial

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse

from generator.asked.incoming import proof
from generator.desk import changes
from generator.desk.answers import (
    NAME,
    House,
    Wrong,
    answering,
    body_of,
    known_of,
    recipe_in,
    text_in,
    told,
    values_of,
)
from generator.desk.entries import Entry as Entered
from generator.desk.entries import enter, read_entries
from generator.desk.guard import COOKIE
from generator.desk.review import MOST_BYTES, take_in, write
from generator.render.photo_intake import MOST_BYTES as MOST_PHOTO
from generator.render.photo_intake import photo_taken_in


@answering
async def entries_change(house: House, request: Request) -> object:
    values = await values_of(request)
    known, entries = await known_of(house), read_entries(values.get("entries"))
    name, on = recipe_in(known, request), _day(text_in(values, "day"))
    if not name or entries is None or on is None:
        raise Wrong
    return {"ok": True, **await run_in_threadpool(enter, house.desk, name, on, entries)}


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text) if re.fullmatch(r"\d{4}-\d\d-\d\d", text, re.ASCII) else None
    except ValueError:
        return None


@answering
async def photo_change(house: House, request: Request) -> object:
    known = await known_of(house)
    name, on = recipe_in(known, request), _day(request.query_params.get("day", ""))
    id = request.query_params.get("id", "")
    if not name or on is None or not 8 <= len(id) <= 64 or not id.isascii():
        raise Wrong
    data = await body_of(request, most=MOST_PHOTO)
    taken = await run_in_threadpool(photo_taken_in, data)
    if isinstance(taken, str):
        return {"ok": True, "done": [], "refused": [[id, taken]], "told": []}
    entry = Entered(id=id, kind="photo", text="")
    return {
        "ok": True,
        **await run_in_threadpool(partial(enter, house.desk, name, on, (entry,), photo=taken)),
    }


@answering
async def correct_change(house: House, request: Request) -> object:
    values = await values_of(request)
    name = recipe_in(await known_of(house), request)
    told = {key: text_in(values, key) for key in ("what", "new", "why", "bake")}
    return await run_in_threadpool(partial(changes.carry_out, house.desk, name, **told))


@answering
async def check_change(house: House, request: Request) -> object:
    """What is wrong with a recipe as it is typed, beside the recipes there are."""
    values, known = await values_of(request), await known_of(house)
    name = recipe_in(known, request)
    if not name:
        raise Wrong
    shelf, book = known.result.shelf, known.result.setting.book
    found = await run_in_threadpool(partial(proof, name, text_in(values, "text"), shelf=shelf, book=book))
    return JSONResponse({"ok": True, "found": told(found)})


@answering
async def save_change(house: House, request: Request) -> object:
    values, known = await values_of(request), await known_of(house)
    name = recipe_in(known, request)
    if not name:
        raise Wrong
    work = partial(changes.save_text, house.desk, f"recipes/{name}.md")
    return await run_in_threadpool(partial(work, base=text_in(values, "base"), typed=text_in(values, "text")))


@answering
async def fields_change(house: House, request: Request) -> object:
    values, known = await values_of(request), await known_of(house)
    name, wanted = recipe_in(known, request), values.get("fields")
    if not name or not isinstance(wanted, dict) or not all(isinstance(each, str) for each in wanted.values()):
        raise Wrong
    work = partial(changes.save_fields, house.desk, f"recipes/{name}.md")
    return await run_in_threadpool(partial(work, base=text_in(values, "base"), wanted=wanted))


@answering
async def record_change(house: House, request: Request) -> object:
    values = await values_of(request)
    name = recipe_in(await known_of(house), request)
    return await run_in_threadpool(changes.record_by_hand, house.desk, name, text_in(values, "why"))


@answering
async def read_change(house: House, request: Request) -> object:
    values = await values_of(request)
    return await run_in_threadpool(changes.pack_read, house.desk, text_in(values, "row"))


@answering
async def mark_change(house: House, request: Request) -> object:
    values = await values_of(request)
    texts = (text_in(values, "recipe"), text_in(values, "place"), text_in(values, "to"))
    return await run_in_threadpool(changes.mark_posted, house.desk, *texts)


@answering
async def take_in_change(house: House, request: Request) -> object:
    values = await values_of(request)
    data = text_in(values, "text").encode("utf-8", "replace")
    if len(data) > MOST_BYTES:
        return {"ok": False, "told": ["this is longer than any description"]}
    ids, told = await run_in_threadpool(take_in, house.desk, house.reviews, "pasted.txt", data)
    return {"ok": bool(ids), "told": told, "ids": ids}


@answering
async def write_change(house: House, request: Request) -> object:
    values, id = await values_of(request), request.path_params["id"]
    brought, lines, name = house.reviews.get(id), values.get("lines"), text_in(values, "name")
    if brought is None or not isinstance(lines, list) or not all(isinstance(each, str) for each in lines):
        raise Wrong
    if not NAME.fullmatch(name) or len(name) > 80 or any("\n" in each or "\r" in each for each in lines):
        return {"ok": False, "told": ["the name takes lower-case letters, digits and single hyphens"]}
    work = partial(write, house.desk, brought, name=name, lines=lines, with_rows=values.get("rows") is True)
    answer = await run_in_threadpool(work)
    if answer["ok"]:
        house.reviews.drop(id)
    return answer


@answering
async def enter_change(house: House, request: Request) -> object:
    values = await values_of(request)
    session = house.door.enter(text_in(values, "code")[:40])
    if not session:
        await asyncio.sleep(1)
        return JSONResponse({"ok": False, "told": ["that is not the code in the terminal"]}, status_code=403)
    answer = JSONResponse({"ok": True})
    answer.set_cookie(COOKIE, session, httponly=True, samesite="strict", path="/")
    return answer
