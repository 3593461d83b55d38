"""What a content folder means, as far as it could be understood."""

from collections.abc import Mapping
from contextlib import AbstractContextManager
from dataclasses import dataclass
from functools import cached_property

from generator.declaration.people import Eater
from generator.diagnostics.diagnostic import Diagnostics
from generator.formula.article import Article
from generator.formula.shelf import Shelf
from generator.history.bakes import BakeRecord, newest_bake
from generator.present.listing import site_view
from generator.present.people import PeopleView, people_view
from generator.present.recipe import Setting
from generator.present.tag_views import TagView
from generator.present.tags import tag_view
from generator.present.views import RecipeView, SiteView
from generator.proof.expected import Expected
from generator.publication.leaves import bare
from generator.publication.outputs import MediaFolder
from generator.publication.release import expected_output
from generator.wording.speech import speaking


@dataclass(frozen=True, kw_only=True)
class CheckResult:
    """What a folder means, and everything that is wrong with it.

    `setting` holds every recipe that is free of errors, `shelf` what they are made from, `views` what their reader
    sees; what a page offers beside it is worded when it is first asked for.
    """

    diagnostics: Diagnostics
    texts: Mapping[str, str]
    setting: Setting
    shelf: Shelf
    views: Mapping[str, RecipeView]
    articles: tuple[Article, ...]
    media: MediaFolder
    bakes: tuple[BakeRecord, ...] = ()
    people: tuple[Eater, ...] = ()

    @cached_property
    def site(self) -> SiteView:
        with self.speaking():
            return site_view(self.articles, self.setting, self.views)

    @cached_property
    def bare_site(self) -> SiteView:
        """The publication without anything that it lists."""
        with self.speaking():
            return bare(site_view((), self.setting, {}, known={}))

    def tag(self, name: str) -> TagView:
        """The tag of a recipe, by the newest record up to the publication day."""
        record = newest_bake(self.bakes, name, until=self.setting.day)
        with self.speaking():
            return tag_view(self.setting.book[name], self.setting, record, plain=self.views.get(name))

    @cached_property
    def expected(self) -> Expected:
        """What the files of the output must say."""
        tags = {name: self.tag(name) for name in self.setting.book}
        with self.speaking():
            return expected_output(self.site, self.setting, tags=tags, people=self.who_can_eat)

    @property
    def who_can_eat(self) -> PeopleView | None:
        """The table for the desk; None where nobody's avoidances are written down."""
        if not any(each.avoids for each in self.people):
            return None
        with self.speaking():
            return people_view(self.people, self.setting, self.bakes)

    def speaking(self) -> AbstractContextManager[None]:
        """The publication's language, for whoever words or renders something of it."""
        return speaking(self.setting.settings.language)
