package easewright.rulebook;

import easewright.rulebook.Outline.Place;
import easewright.rulebook.Outline.View;
import java.io.StringReader;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import javax.xml.stream.XMLInputFactory;
import javax.xml.stream.XMLStreamConstants;
import javax.xml.stream.XMLStreamException;
import javax.xml.stream.XMLStreamReader;

/**
 * Reads an outline. Its lines become part of pages, so only groups, paths and circles pass, and
 * only attributes that say how they look.
 */
final class OutlineReader {
  private static final Set<String> SHAPES = Set.of("g", "path", "circle");
  private static final Set<String> LOOKS =
      Set.of(
          "d",
          "cx",
          "cy",
          "r",
          "fill",
          "fill-opacity",
          "stroke",
          "stroke-width",
          "stroke-opacity",
          "stroke-linejoin",
          "stroke-linecap",
          "stroke-dasharray");
  private static final Pattern LOOK = Pattern.compile("[-A-Za-z0-9 .,#]*");
  private static final Pattern PATH = Pattern.compile("M[-MLQCZ0-9 .]+");
  private static final Pattern LABEL =
      Pattern.compile("(left|right|below) (\\d{1,3}) (\\d{1,3}) (\\d{1,3})");

  private final XMLStreamReader xml;
  private final Map<String, View> views = new HashMap<>();
  private final Set<String> places = new HashSet<>();

  OutlineReader(String svg) {
    XMLInputFactory factory = XMLInputFactory.newFactory();
    factory.setProperty(XMLInputFactory.SUPPORT_DTD, false);
    factory.setProperty(XMLInputFactory.IS_COALESCING, true);
    try {
      xml = factory.createXMLStreamReader(new StringReader(svg));
    } catch (XMLStreamException unreadable) {
      throw unreadable(unreadable);
    }
  }

  Outline outline() {
    try {
      xml.nextTag();
      String garment = needed("data-garment", "what is drawn");
      List<String> down = List.of(needed("data-down", "the places from the top down").split(" "));
      String title = null;
      while (xml.nextTag() == XMLStreamConstants.START_ELEMENT) {
        if (xml.getLocalName().equals("title")) {
          title = xml.getElementText();
        } else {
          views.put(needed("id", "front or back"), view());
        }
      }
      if (title == null || !views.keySet().equals(Set.of("front", "back"))) {
        throw fault(
            "The drawing lacks its title, or one of its views.",
            "Write a title, and a group for each of front and back.");
      }
      Outline outline = new Outline(garment, title, down, views.get("front"), views.get("back"));
      listed(outline);
      return outline;
    } catch (XMLStreamException unreadable) {
      throw unreadable(unreadable);
    }
  }

  private void listed(Outline outline) {
    for (View view : views.values()) {
      for (Place place : view.places()) {
        if (place.mark() != null && !outline.down().contains(place.listedAt())) {
          throw fault(
              "The place " + place.id() + " is listed under " + place.listedAt() + ", no part.",
              "Name one of data-down as its data-part.");
        }
      }
    }
  }

  private View view() throws XMLStreamException {
    String title = null;
    String desc = null;
    String lines = null;
    List<Place> found = new ArrayList<>();
    while (xml.nextTag() == XMLStreamConstants.START_ELEMENT) {
      String what = xml.getLocalName();
      if (what.equals("title")) {
        title = xml.getElementText();
      } else if (what.equals("desc")) {
        desc = xml.getElementText();
      } else if ("drawn".equals(attribute("class"))) {
        lines = lines();
      } else {
        while (xml.nextTag() == XMLStreamConstants.START_ELEMENT) {
          found.add(place());
        }
      }
    }
    if (title == null || desc == null || lines == null) {
      throw fault(
          "A view lacks its title, its desc or its group \"drawn\".", "Write all three of it.");
    }
    return new View(title, desc, lines, List.copyOf(found));
  }

  private Place place() throws XMLStreamException {
    String id = needed("id", "the place word");
    if (!places.add(id)) {
      throw fault("The place " + id + " is drawn twice.", "Delete one of the two.");
    }
    Matcher label = LABEL.matcher(needed("data-label", "side, height and end of its line"));
    if (!label.matches()) {
      throw fault(
          "The label of " + id + " is not understood.",
          "Write side, height, and both numbers of the end of its line: left 30 186 44.");
    }
    String kind = needed("class", "line, area or word");
    String mark = kind.equals("word") ? null : needed("d", "path data");
    if (mark != null && !PATH.matcher(mark).matches()) {
      throw fault(
          "The path of " + id + " has other letters than M, L, Q, C and Z.", "Write those only.");
    }
    Place place =
        new Place(
            id,
            attribute("data-part"),
            mark,
            kind.equals("area"),
            label.group(1),
            number(label, 2),
            number(label, 3),
            number(label, 4));
    xml.nextTag();
    return place;
  }

  private static int number(Matcher label, int group) {
    return Integer.parseInt(label.group(group));
  }

  /** What stands in the group just opened, as it is written. */
  private String lines() throws XMLStreamException {
    StringBuilder written = new StringBuilder();
    int open = 1;
    while (open > 0) {
      switch (xml.next()) {
        case XMLStreamConstants.START_ELEMENT -> {
          open++;
          shape(written);
        }
        case XMLStreamConstants.END_ELEMENT -> {
          open--;
          if (open > 0 && xml.getLocalName().equals("g")) {
            written.append("</g>");
          }
        }
        case XMLStreamConstants.CHARACTERS -> {
          if (!xml.isWhiteSpace()) {
            throw fault("There is text among the lines.", "Delete it.");
          }
          written.append(xml.getText());
        }
        default -> {
          // A comment is for whoever edits the file.
        }
      }
    }
    return written.toString().strip();
  }

  private void shape(StringBuilder written) {
    String name = xml.getLocalName();
    if (!SHAPES.contains(name)) {
      throw fault("A " + name + " is not drawn.", "Draw with g, path and circle.");
    }
    written.append('<').append(name);
    for (int i = 0; i < xml.getAttributeCount(); i++) {
      String look = xml.getAttributeLocalName(i);
      String as = xml.getAttributeValue(i);
      if (!LOOKS.contains(look) || !LOOK.matcher(as).matches()) {
        throw fault(
            "A " + name + " has " + look + "=\"" + as + "\", which is not drawn.", "Leave it out.");
      }
      written.append(' ').append(look).append("=\"").append(as).append('"');
    }
    written.append(name.equals("g") ? ">" : "/>");
  }

  private String needed(String attribute, String what) {
    String value = attribute(attribute);
    if (value == null || value.isBlank()) {
      throw fault(
          "A " + xml.getLocalName() + " lacks its " + attribute + ".", "Write it: " + what + ".");
    }
    return value;
  }

  private String attribute(String name) {
    return xml.getAttributeValue(null, name);
  }

  private OutlineFault fault(String problem, String remedy) {
    return new OutlineFault(xml.getLocation().getLineNumber(), problem, remedy);
  }

  private static OutlineFault unreadable(XMLStreamException met) {
    int line = met.getLocation() == null ? 0 : met.getLocation().getLineNumber();
    return new OutlineFault(line, "The drawing is not such an SVG file.", "Look at another one.");
  }
}
