"""JSON-LD as text."""

import json
from collections.abc import Mapping

Node = Mapping[str, object]


def script(*nodes: Node) -> str:
    """The nodes as one graph, keys in the order given. No text in it can end the script element it stands in."""
    graph = {"@context": "https://schema.org", "@graph": list(nodes)}
    text = json.dumps(graph, ensure_ascii=False, separators=(",", ":"))
    return text.replace("</", "<\\/").replace("<!--", "\\u003c!--")


def known(node: Node) -> dict[str, object]:
    """The node without what is not known: an empty text, an empty list, None."""
    return {key: value for key, value in node.items() if value not in ("", None, [], ())}
