"""Answers: a page of the desk from its template, a file of the output, a style sheet or script of our own."""

import mimetypes
from pathlib import Path, PurePosixPath

from starlette.responses import Response

from generator.desk.state import Known
from generator.render.theme import templates, theme_folder
from generator.wording.speech import NOTATION, speaking

_STATIC = {
    "desk.css": "text/css",
    "live.css": "text/css",
    "desk.js": "text/javascript",
    "live.js": "text/javascript",
    "bench.js": "text/javascript",
    "timers.js": "text/javascript",
    "edit.js": "text/javascript",
    "review.js": "text/javascript",
}
_LIVE = b'<link rel="stylesheet" href="/desk/files/live.css"><script src="/desk/files/live.js" defer></script></body>'
_NO_STORE = {"cache-control": "no-store"}
_FOR_A_WHILE = {"cache-control": "private, max-age=3600"}


class Paper:
    """Fills the desk's templates. `token` is what a change must carry."""

    def __init__(self, *, token: str, theme: str) -> None:
        self._token = token
        self._templates = templates(theme, "view")
        folder: Path = theme_folder(theme, "view")
        self._static = {name: (folder / name).read_bytes() for name in _STATIC}

    def page(self, template: str, known: Known | None, *, status: int = 200, **values: object) -> Response:
        """`known` is None for who is not let in yet: then nothing of the folder is shown, and no token."""
        settings = known.result.setting.settings if known else None
        # The desk itself speaks to the maker.
        with speaking(NOTATION):
            html = self._templates.get_template(template).render(
                token=self._token if known else "",
                publication=settings.title if settings else "",
                language=settings.language if settings else "en",
                inside=known is not None,
                **values,
            )
        return Response(html, status_code=status, media_type="text/html", headers=_NO_STORE)

    def static(self, name: str) -> Response:
        if name not in self._static:
            return Response("There is no such file.", status_code=404, media_type="text/plain")
        return Response(self._static[name], media_type=_STATIC[name], headers=_NO_STORE)


def file_answer(path: str, content: bytes | None, *, status: int = 200, live: bool = False) -> Response:
    """A file of the output; with `live`, a page that loads itself again when the folder changes."""
    if content is None:
        return Response("There is no such file.", status_code=404, media_type="text/plain")
    kind = mimetypes.guess_type(PurePosixPath(path).name)[0] or "application/octet-stream"
    if kind == "text/html" and live:
        content = content.replace(b"</body>", _LIVE, 1)
    # Letters do not change while one bakes; without them at hand every page would begin in others.
    kept = _FOR_A_WHILE if kind == "font/woff2" else _NO_STORE
    return Response(content, status_code=status, media_type=kind, headers=kept)
