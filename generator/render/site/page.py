"""A page: what it says, where it stands, and how it becomes HTML."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from markupsafe import Markup

from generator.present.posters import SharedView
from generator.present.trails import trail_of
from generator.present.views import PhotoView, Rich
from generator.render.output import Product
from generator.render.rich_text import figure, is_local, prose_html, rich_html, tied
from generator.render.site.frame import Frame
from generator.render.site.pictures import Picture, list_picture_of, media_place, picture_of
from generator.render.site.places import file_of, relative
from generator.render.site.policy import MARK as POLICY
from generator.render.site.policy import with_policy
from generator.render.site.sizes import Choices
from generator.render.site.slim import slim_html
from generator.render.site.strip import bars
from generator.render.theme import templates

_NOTHING: Mapping[str, object] = MappingProxyType({})


@dataclass(frozen=True, slots=True, kw_only=True)
class Page:
    """One page. `path` leads from the root, `kind` is Open Graph's word, `structured` is JSON-LD or "".

    `choices` are what the page's own script may change on it.
    """

    template: str
    path: str
    title: str
    description: str
    kind: str = "website"
    picture: SharedView | None = None
    structured: str = ""
    published: str = ""
    updated: str = ""
    choices: Choices = field(default_factory=Choices)
    content: Mapping[str, object] = field(default_factory=lambda: _NOTHING)


def page_product(page: Page, frame: Frame) -> Product:
    """The finished page as a file under "site/"."""
    template = templates(frame.theme, "site").get_template(page.template)
    html = template.render(
        page=page,
        policy=POLICY,
        frame=frame,
        heading=f"{page.title} · {frame.title}" if page.path else frame.title,
        canonical=frame.url + page.path,
        trail=trail_of(page.path, page.title),
        locale=frame.language.replace("-", "_"),
        data_block=data_block(page.structured),
        choices_block=data_block(page.choices.data),
        **_tools(page.path, page.choices),
        **page.content,
    )
    return Product(path=f"site/{file_of(page.path)}", content=with_policy(html).encode())


def finished_page(page: Page, frame: Frame) -> Product:
    """The page as it is published: the same elements and words in fewer bytes."""
    product = page_product(page, frame)
    return Product(path=product.path, content=slim_html(product.content.decode()).encode())


def _tools(path: str, choices: Choices) -> dict[str, object]:
    """What a template may call: each makes one view fit the page at `path`."""

    def to(target: str) -> str:
        return relative(target, page=path)

    def to_named(address: str) -> str:
        return address if address.startswith("#") else to(media_place(address))

    def follow(address: str) -> str:
        return to_named(address) if is_local(address) else address

    def picture(photo: PhotoView) -> Picture:
        return picture_of(photo, page=path)

    def list_picture(photo: PhotoView) -> Picture:
        return list_picture_of(photo, page=path)

    def prose(markdown: str, level: int) -> Markup:
        return prose_html(markdown, level=level, place=to_named)

    def rich(words: Rich, level: int, name: str = "") -> Markup:
        def mark(number: int, end: str) -> Markup:
            return choices.mark(f"{name} mention {number} {end}")

        return rich_html(words, level=level, place=to_named, mark=mark)

    return {
        "to": to,
        "follow": follow,
        "picture": picture,
        "list_picture": list_picture,
        "prose": prose,
        "rich": rich,
        "figure": figure,
        "tied": tied,
        "bars": bars,
        "mark": choices.mark,
    }


def data_block(structured: str) -> Markup:
    """JSON for a script element: no sign in it can end the element or open a comment."""
    return Markup(structured.replace("<", "\\u003c"))
