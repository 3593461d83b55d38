"""The feed as Atom (RFC 4287)."""

import re
from xml.etree.ElementTree import Element, SubElement, indent, register_namespace, tostring

from generator.present.views import SiteView
from generator.render.feeds.entry import Entry
from generator.render.feeds.places import uri

NAMESPACE = "http://www.w3.org/2005/Atom"
# What XML 1.0 cannot hold even as a reference.
_NOT_XML = re.compile("[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")


def atom(site: SiteView, entries: tuple[Entry, ...]) -> bytes:
    """The whole feed in UTF-8. Its id is the address of the site."""
    register_namespace("", NAMESPACE)
    feed = Element(_tag("feed"), {"{http://www.w3.org/XML/1998/namespace}lang": site.language})
    _add(feed, "id", uri(site.url))
    _add(feed, "title", site.title)
    if site.lead:
        _add(feed, "subtitle", site.lead)
    _add(feed, "updated", site.updated)
    _add(SubElement(feed, _tag("author")), "name", site.maker)
    SubElement(feed, _tag("link"), rel="self", type="application/atom+xml", href=uri(f"{site.url}feed.xml"))
    SubElement(feed, _tag("link"), rel="alternate", type="text/html", href=uri(site.url))
    for entry in entries:
        _add_entry(feed, entry)
    indent(feed, space=" ")
    return bytes(tostring(feed, encoding="utf-8", xml_declaration=True)) + b"\n"


def _add_entry(feed: Element, entry: Entry) -> None:
    element = SubElement(feed, _tag("entry"))
    _add(element, "id", entry.url)
    _add(element, "title", entry.title)
    SubElement(element, _tag("link"), rel="alternate", type="text/html", href=entry.url)
    _add(element, "published", entry.published)
    _add(element, "updated", entry.updated)
    for tag in entry.tags:
        SubElement(element, _tag("category"), term=_text(tag))
    if entry.summary:
        _add(element, "summary", entry.summary)
    _add(element, "content", entry.html, type="html")


def _add(parent: Element, name: str, words: str, **attributes: str) -> None:
    SubElement(parent, _tag(name), attributes).text = _text(words)


def _text(words: str) -> str:
    return _NOT_XML.sub("", words)


def _tag(name: str) -> str:
    return f"{{{NAMESPACE}}}{name}"
