"""Tables of old pages whose cells hold whole columns, line against line, made into one row for each line."""

from xml.etree.ElementTree import Element, SubElement

_PLAIN = frozenset({"br", "b", "i", "em", "strong", "span", "font", "small"})


def straighten(root: Element) -> None:
    """Rows whose cells have the same number of lines, more than one, become as many rows."""
    for table in list(root.iter()):
        for row in [each for each in table if each.tag == "tr"]:
            cells = [each for each in row if each.tag in ("td", "th")]
            columns = [_lines(each) for each in cells]
            counts = {len(each) for each in columns}
            if len(cells) < 2 or len(counts) != 1 or counts <= {1} or any(_is_deep(each) for each in cells):
                continue
            at = list(table).index(row)
            table.remove(row)
            for number, texts in enumerate(zip(*columns, strict=True)):
                fresh = Element("tr")
                for text in texts:
                    SubElement(fresh, "td").text = text
                table.insert(at + number, fresh)


def _is_deep(cell: Element) -> bool:
    """Whether a cell holds more than text, breaks and emphasis: links and pictures are left where they are."""
    return any(
        each.tag not in ("br", "b", "i", "em", "strong", "span", "font", "small")
        for each in cell.iter()
        if each is not cell
    )


def _lines(cell: Element) -> list[str]:
    words: list[str] = [cell.text or ""]
    for each in cell:
        words += ["\n"] if each.tag == "br" else ["".join(each.itertext())]
        words.append(each.tail or "")
    return ["".join(some) for some in _split(words)]


def _split(words: list[str]) -> list[list[str]]:
    out: list[list[str]] = [[]]
    for each in words:
        if each == "\n":
            out.append([])
        else:
            out[-1].append(each)
    return out
