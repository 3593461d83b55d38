"""The addresses of the preview and the desk, and what answers at each."""

from collections.abc import Callable
from typing import Any

from starlette.applications import Starlette
from starlette.requests import Request
from starlette.routing import Route

from generator.asked.preview import TemplateFault
from generator.desk import reading, writing
from generator.desk.answers import House
from generator.wording.speech import NOTATION, speaking


def app_of(house: House) -> Starlette:
    """The application, without the wall around it."""
    shown: list[tuple[str, Callable[[House, Request], Any]]] = [
        ("/desk/", reading.home_page),
        ("/desk/state.json", reading.state_page),
        ("/desk/events", reading.events_page),
        ("/desk/files/{name}", reading.static_page),
        ("/desk/out/{path:path}", reading.out_page),
        ("/desk/bench/{name}", reading.bench_page),
        ("/desk/bench/{name}/sum.json", reading.sum_page),
        ("/desk/edit/{name}", reading.edit_page),
        ("/desk/pantry", reading.pantry_page),
        ("/desk/copies", reading.copies_page),
        ("/desk/bring", reading.bring_page),
        ("/desk/review/{id}", reading.review_page),
        ("/desk/enter", reading.enter_page),
        ("/{path:path}", reading.site_page),
    ]
    changed: list[tuple[str, Callable[[House, Request], Any]]] = [
        ("/desk/bench/{name}/entries", writing.entries_change),
        ("/desk/bench/{name}/photo", writing.photo_change),
        ("/desk/correct/{name}", writing.correct_change),
        ("/desk/edit/{name}/check", writing.check_change),
        ("/desk/edit/{name}/save", writing.save_change),
        ("/desk/edit/{name}/fields", writing.fields_change),
        ("/desk/edit/{name}/record", writing.record_change),
        ("/desk/pantry/read", writing.read_change),
        ("/desk/copies/mark", writing.mark_change),
        ("/desk/bring", writing.take_in_change),
        ("/desk/review/{id}/write", writing.write_change),
        ("/desk/enter", writing.enter_change),
    ]
    routes = [Route(path, _spoken(work, house), methods=["POST"]) for path, work in changed]
    routes += [Route(path, _spoken(work, house), methods=["GET"]) for path, work in shown]
    return Starlette(routes=routes, exception_handlers={TemplateFault: reading.fault_page})


def _spoken(work: Callable[[House, Request], Any], house: House) -> Callable[[Request], Any]:
    """What is worded for an answer is worded in the language of the publication, as it was last read."""

    async def answer(request: Request) -> Any:
        known = house.desk.last
        with speaking(known.result.setting.settings.language if known else NOTATION):
            return await work(house, request)

    return answer
