"""The page at an old address: it sends the reader on at once, and has a link for those it cannot send."""

from generator.present.search_views import MovedView
from generator.render.output import Product
from generator.render.site.frame import Frame
from generator.render.site.places import file_of, relative
from generator.render.site.policy import MARK, with_policy
from generator.render.theme import templates


def moved_product(moved: MovedView, frame: Frame) -> Product:
    """Plain HTML that needs neither script nor style; search engines take the new address from it."""
    html = (
        templates(frame.theme, "site")
        .get_template("moved.html")
        .render(frame=frame, moved=moved, policy=MARK, target=relative(moved.to.path, page=moved.path))
    )
    return Product(path=f"site/{file_of(moved.path)}", content=with_policy(html).encode())
