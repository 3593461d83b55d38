"""What all answers of the desk share: the house they stand in, how a request is read, how a change is told."""

import json
import re
from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

from starlette.requests import Request
from starlette.responses import JSONResponse, Response

from generator.desk.bells import Bells
from generator.desk.entry_code import Door
from generator.desk.looks import Looks
from generator.desk.overview import recipe_names
from generator.desk.pages import Paper
from generator.desk.review import Reviews
from generator.desk.state import Desk, Known
from generator.diagnostics.diagnostic import Diagnostics

MOST_JSON = 2_000_000
NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")


@dataclass(frozen=True, slots=True, kw_only=True)
class House:
    """What all answers share."""

    desk: Desk
    looks: Looks[Known]
    reviews: Reviews
    door: Door
    bells: Bells
    paper: Paper


class Wrong(Exception):
    """A request that our own pages do not make."""


async def body_of(request: Request, *, most: int = MOST_JSON) -> bytes:
    data = bytearray()
    async for piece in request.stream():
        data += piece
        if len(data) > most:
            raise Wrong
    return bytes(data)


async def values_of(request: Request) -> dict[str, Any]:
    """The JSON object of a request. Raises Wrong for anything else."""
    if request.headers.get("content-type", "").partition(";")[0] != "application/json":
        raise Wrong
    try:
        values = json.loads(await body_of(request))
    except (ValueError, RecursionError):
        raise Wrong from None
    if not isinstance(values, dict):
        raise Wrong
    return values


def text_in(values: dict[str, Any], key: str) -> str:
    value = values.get(key, "")
    if not isinstance(value, str):
        raise Wrong
    return value


def answering(work: Callable[[House, Request], Any]) -> Callable[[House, Request], Any]:
    """A change: its answer as JSON; a request that is none of ours is 400, an error of the disk 507."""

    async def answer(house: House, request: Request) -> Response:
        try:
            values = await work(house, request)
        except Wrong:
            return JSONResponse({"ok": False, "told": ["this request cannot be understood"]}, status_code=400)
        except OSError as error:
            told = f"this cannot be read or written: {error.strerror}"
            return JSONResponse({"ok": False, "told": [told]}, status_code=507)
        if isinstance(values, Response):
            return values
        house.bells.ring()
        return JSONResponse(values)

    return answer


async def known_of(house: House) -> Known:
    """The folder as it is at this moment."""
    return await house.looks.fresh()


def recipe_in(known: Known, request: Request) -> str:
    """The name in the address where there is such a recipe, else ""."""
    name: str = request.path_params["name"]
    return name if name in recipe_names(known) else ""


def told(found: Diagnostics) -> list[dict[str, object]]:
    return [
        {
            "path": each.span.path,
            "line": each.span.line,
            "column": each.span.column,
            "severity": each.severity.value,
            "code": each.code,
            "message": each.message,
            "hint": each.hint,
        }
        for each in found
    ]
