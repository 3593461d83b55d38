"""Answers that only show: pages of the desk, files of the output, what is wrong, that something changed."""

import asyncio
from collections.abc import AsyncIterator
from html import escape

from starlette.concurrency import run_in_threadpool
from starlette.requests import Request
from starlette.responses import JSONResponse, Response, StreamingResponse

from generator.amend.form import fields_of
from generator.amend.retype import shown_text
from generator.asked.baking import bakes_of, view_of
from generator.asked.bench import bench_view, sizes_offered
from generator.asked.incoming import doubts_of
from generator.asked.preview import TemplateFault
from generator.desk import changes
from generator.desk.answers import (
    House,
    known_of,
    recipe_in,
    told,
)
from generator.desk.overview import last_good, packs_of, rows_of
from generator.desk.pages import file_answer
from generator.diagnostics.text import as_text
from generator.pipeline import describe_text
from generator.records.due import stale_copies, unmarked
from generator.render.description.correction import correction_note


async def home_page(house: House, request: Request) -> Response:
    known = await known_of(house)
    other = tuple(each for each in known.result.diagnostics if not each.span.path.startswith("recipes/"))
    rows = await run_in_threadpool(rows_of, known)
    packs = [each for each in packs_of(known) if each.remarks]
    return house.paper.page(
        "home.html", known, rows=rows, other=told(other), packs=packs, stale=stale_copies(known.result)
    )


async def state_page(house: House, request: Request) -> Response:
    known = await known_of(house)
    errors = [each for each in told(known.result.diagnostics) if each["severity"] == "error"]
    values = {"number": known.number, "errors": errors, "head": last_good(len(errors))}
    return JSONResponse(values, headers={"cache-control": "no-store"})


async def events_page(house: House, request: Request) -> Response:
    """A line for each change of the folder, for as long as the page is open."""
    ear = house.bells.listen()
    if ear is None:
        return Response("too many pages listen", status_code=503)

    async def lines() -> AsyncIterator[bytes]:
        try:
            yield b"retry: 1000\n\n"
            while not house.bells.ended:
                try:
                    await asyncio.wait_for(ear.get(), timeout=15)
                    yield b"data: changed\n\n"
                except TimeoutError:
                    yield b": still here\n\n"
        finally:
            house.bells.leave(ear)

    return StreamingResponse(lines(), media_type="text/event-stream", headers={"cache-control": "no-store"})


async def static_page(house: House, request: Request) -> Response:
    return house.paper.static(request.path_params["name"])


async def out_page(house: House, request: Request) -> Response:
    path = f"desk/{request.path_params['path']}"
    return file_answer(path, await run_in_threadpool(house.desk.file, path, await known_of(house)))


async def site_page(house: House, request: Request) -> Response:
    path: str = request.path_params["path"]
    inside = f"site/{path}index.html" if not path or path.endswith("/") else f"site/{path}"
    known = await known_of(house)
    content = await run_in_threadpool(house.desk.file, inside, known)
    if content is None and f"{inside}/index.html" in known.pieces:
        return Response(status_code=307, headers={"location": f"/{path}/"})
    if content is None:
        missing = await run_in_threadpool(house.desk.file, "site/404.html", known)
        return file_answer("404.html", missing, status=404, live=True)
    return file_answer(inside, content, live=True)


async def fault_page(_request: Request, fault: Exception) -> Response:
    """In the place of a page whose template cannot be filled: what is wrong with it. It loads again by itself."""
    told = str(fault)
    if isinstance(fault, TemplateFault):
        told = as_text((fault.finding,), {fault.finding.span.path: fault.text})
    page = f'<!doctype html><html lang="en"><title>A template</title><body><pre>{escape(told)}</pre></body></html>'
    return file_answer("fault.html", page.encode(), status=500, live=True)


async def bench_page(house: House, request: Request) -> Response:
    known = await known_of(house)
    name = recipe_in(known, request)
    if name not in known.result.setting.book:
        return house.paper.page("missing.html", known, status=404, name=name)
    size = request.query_params.get("size", "")[:60]
    view = await run_in_threadpool(bench_view, known.result, name, size=size)
    offers = await run_in_threadpool(sizes_offered, known.result, name)
    refused = view if isinstance(view, str) else ""
    if isinstance(view, str):
        whole = bench_view(known.result, name)
        view = whole if not isinstance(whole, str) else view
    day = known.result.setting.day.isoformat()
    packs = known.result.shelf.pantry.names()
    return house.paper.page(
        "bench.html", known, bench=view, refused=refused, size=size, offers=offers, day=day, packs=packs
    )


async def sum_page(house: House, request: Request) -> Response:
    known = await known_of(house)
    name, on = recipe_in(known, request), request.query_params.get("day", "")
    if name not in known.result.setting.book:
        return JSONResponse({"ok": False, "told": ["the recipe has errors"]}, status_code=404)
    bakes = await run_in_threadpool(bakes_of, known.result, house.desk.root, name)
    chosen = [each for each in bakes if each.day.record.day.isoformat() == on]
    if not chosen:
        return JSONResponse({"ok": False, "told": ["nothing is recorded of this day yet"]}, status_code=404)
    view = view_of(known.result, chosen[-1])
    return JSONResponse(
        {
            "ok": True,
            "title": view.title,
            "summary": view.summary,
            "alarms": view.alarms,
            "remarks": view.remarks,
            "facts": view.facts,
            "offers": view.offers,
            "offered": [
                {
                    "what": each.what,
                    "new": each.new,
                    "why": each.why,
                    "bake": each.bake,
                    "command": each.command,
                }
                for each in view.offered
            ],
            "no_offer": view.no_offer,
        }
    )


async def edit_page(house: House, request: Request) -> Response:
    known = await known_of(house)
    name = recipe_in(known, request)
    path = f"recipes/{name}.md"
    data = changes.file_bytes(house.desk.root, path) if name else None
    text = shown_text(data) if data is not None else None
    if data is None or text is None:
        return house.paper.page("missing.html", known, status=404, name=name)
    found = [each for each in known.result.diagnostics if each.span.path == path]
    return house.paper.page(
        "edit.html",
        known,
        name=name,
        text=text,
        base=changes.base_of(data),
        fields=fields_of(path, data),
        found=told(tuple(found)),
        unrecorded=any(each.code in ("H006", "H007") for each in found),
        has_page=f"site/recipes/{name}/index.html" in known.pieces,
    )


async def pantry_page(house: House, request: Request) -> Response:
    known = await known_of(house)
    return house.paper.page("pantry.html", known, packs=packs_of(known))


async def copies_page(house: House, request: Request) -> Response:
    known = await known_of(house)
    result = known.result
    texts = {
        name: {"description": describe_text(result, name), "correction": correction_note(result.views[name])}
        for name in result.views
    }
    copies = [each for name in result.setting.ledger.recipes() for each in result.setting.ledger.posted(name)]
    return house.paper.page(
        "copies.html",
        known,
        stale=stale_copies(result),
        never=unmarked(result),
        copies=copies,
        texts=texts,
        titles=result.setting.titles,
    )


async def bring_page(house: House, request: Request) -> Response:
    return house.paper.page("bring.html", await known_of(house), waiting=house.reviews.waiting())


async def review_page(house: House, request: Request) -> Response:
    known, brought = await known_of(house), house.reviews.get(request.path_params["id"])
    if brought is None:
        return house.paper.page("missing.html", known, status=404, name="")
    doubts: dict[int, list[str]] = {}
    for doubt, each in zip(brought.doubts, doubts_of(brought), strict=True):
        doubts.setdefault(doubt.line, []).append(f"{each.message}. {each.hint}".strip())
    return house.paper.page(
        "review.html", known, brought=brought, id=request.path_params["id"], doubts=doubts
    )


async def enter_page(house: House, request: Request) -> Response:
    return house.paper.page("enter.html", None)
