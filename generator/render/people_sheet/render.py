"""One page that needs nothing beside it: styles and shapes are inside, so that it can be printed and thrown away."""

from generator.present.people import PeopleView
from generator.render.output import Product
from generator.render.theme import templates

PATH = "desk/people/index.html"


def render_people(view: PeopleView) -> Product:
    """The page under "desk/"."""
    html = templates(view.theme, "desk").get_template("people.html").render(view=view)
    return Product(path=PATH, content=html.encode())
