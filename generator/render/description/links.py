"""What leads away from the block: chapters, links paid and unpaid, further films, credits."""

from generator.present.views import CreditView, RecipeView, VideoView
from generator.render.description.plain import address, plain
from generator.render.description.section import listed
from generator.wording.speech import later, say

# Where a maker marks a link as paid and has not said how: a plain sentence, since "affiliate link" alone may
# not be understood (FTC staff guidance on endorsements, from memory).
UNWORDED = later("I earn money if you buy through a link marked as paid.")


def disclosure(view: RecipeView) -> str:
    """Who earns what; "" without a paid link."""
    paid = any(link.paid for link in view.links)
    return (plain(view.paid_words) or say(UNWORDED)) if paid else ""


def paid_links(view: RecipeView) -> str:
    lines = (
        say("Paid link: {link}", link=f"{plain(link.title)}: {address(link.url)}")
        for link in view.links
        if link.paid
    )
    return listed(say("PAID LINKS"), lines)


def unpaid_links(view: RecipeView) -> str:
    lines = (f"{plain(link.title)}: {address(link.url)}" for link in view.links if not link.paid)
    return listed(say("LINKS"), lines)


def chapters(view: RecipeView) -> str:
    """`0:00 title`, one a line, of the first film: the block stands under that one.

    Times of two films in one block would be read as one list that goes backwards.
    """
    film = view.videos[0] if view.videos else None
    if film is None:
        return ""
    heading = say("CHAPTERS of {film}", film=address(film.url)) if len(view.videos) > 1 else say("CHAPTERS")
    return listed(heading, (f"{chapter.stamp} {chapter.title}" for chapter in film.chapters))


def further_films(view: RecipeView) -> str:
    return listed(say("MORE FILMS"), (_film(film) for film in view.videos[1:]))


def credits_given(view: RecipeView) -> str:
    return listed(say("CREDITS"), (_credit(each) for each in view.credits))


def _film(film: VideoView) -> str:
    about = ", ".join(words for words in (film.day, film.length) if words)
    return f"{plain(film.name)}{f' ({about})' if about else ''}: {address(film.url)}"


def _credit(each: CreditView) -> str:
    told = ": ".join(plain(words) for words in (each.what, each.who) if words)
    return ", ".join(words for words in (told, address(each.url)) if words)
