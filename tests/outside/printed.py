"""Print a PDF on a printer that is off.   usage: printed.py in.pdf out.pdf X Y
Every mark is moved as such a printer moves it: scaled from the page's top left corner by X to the right and by Y down.
The paper stays as it is."""
import sys
import pymupdf


def printed(source, target, fx, fy):
    with pymupdf.open(source) as document:
        for page in document:
            height = page.mediabox.height
            [content] = page.get_contents()
            matrix = f"q {fx:.9f} 0 0 {fy:.9f} 0 {height * (1 - fy):.6f} cm\n".encode()
            document.update_stream(content, matrix + document.xref_stream(content) + b"\nQ")
        document.save(target)


if __name__ == "__main__":
    printed(sys.argv[1], sys.argv[2], float(sys.argv[3]), float(sys.argv[4]))
