package easewright.photo;

import static easewright.photo.UnusablePhoto.Reason.BROKEN;
import static easewright.photo.UnusablePhoto.Reason.TOO_LARGE;
import static easewright.photo.UnusablePhoto.Reason.WITH_MORE;
import static java.nio.charset.StandardCharsets.ISO_8859_1;

import java.io.ByteArrayOutputStream;

/** The segments of a JPEG file (ITU-T T.81, annex B). */
final class JpegSegments {
  private static final int MARK = 0xFF;
  private static final int START = 0xD8;
  private static final int END = 0xD9;
  private static final int SCAN = 0xDA;
  private static final int COMMENT = 0xFE;
  private static final int FIRST_APPLICATION = 0xE0;
  private static final int LAST_APPLICATION = 0xEF;
  private static final int FIRST_RESTART = 0xD0;
  private static final int LAST_RESTART = 0xD7;
  private static final int BASELINE = 0xC0;
  private static final int PROGRESSIVE = 0xC2;

  /**
   * A progressive file decodes all pixels once for each scan, and its scans may be nearly empty:
   * twelve scans of the largest photo, as encoders write them.
   */
  private static final long MOST_PIXELS_IN_SCANS = 300_000_000;

  /** Without it, or Adobe's segment, the decoder takes some colours for others (JFIF 1.02). */
  private static final byte[] JFIF = {
    (byte) MARK, (byte) FIRST_APPLICATION, 0, 16, 'J', 'F', 'I', 'F', 0, 1, 2, 0, 0, 1, 0, 1, 0, 0
  };

  private final byte[] file;
  private final ByteArrayOutputStream kept;
  private int at = 2;
  private int width;
  private int height;
  private int scans;
  private int orientation = Orientation.UPRIGHT;
  private boolean coloursKnown;

  private JpegSegments(byte[] file) {
    this.file = file;
    this.kept = new ByteArrayOutputStream(file.length);
  }

  static boolean begin(byte[] file) {
    return file.length > 2
        && (file[0] & MARK) == MARK
        && (file[1] & MARK) == START
        && (file[2] & MARK) == MARK;
  }

  static PictureFile read(byte[] file) throws UnusablePhoto {
    JpegSegments segments = new JpegSegments(file);
    segments.walk();
    return segments.picture();
  }

  private PictureFile picture() throws UnusablePhoto {
    if (scans == 0 || width == 0) {
      throw new UnusablePhoto(BROKEN);
    }
    ByteArrayOutputStream bare = new ByteArrayOutputStream(file.length);
    bare.write(MARK);
    bare.write(START);
    if (!coloursKnown) {
      bare.writeBytes(JFIF);
    }
    bare.writeBytes(kept.toByteArray());
    return new PictureFile("jpeg", width, height, orientation, bare.toByteArray());
  }

  private void walk() throws UnusablePhoto {
    int marker = marker();
    while (marker != END) {
      boolean alone = marker >= FIRST_RESTART && marker <= LAST_RESTART || marker == 1;
      if (!alone) {
        segment(marker);
      }
      marker = marker();
    }
    kept.write(MARK);
    kept.write(END);
    mustEndHere();
  }

  private int marker() throws UnusablePhoto {
    if (next() != MARK) {
      throw new UnusablePhoto(BROKEN);
    }
    int marker = next();
    while (marker == MARK) { // fill bytes
      marker = next();
    }
    if (marker == 0 || marker == START) {
      throw new UnusablePhoto(BROKEN);
    }
    return marker;
  }

  private int next() throws UnusablePhoto {
    if (at >= file.length) {
      throw new UnusablePhoto(BROKEN);
    }
    return file[at++] & MARK;
  }

  private void segment(int marker) throws UnusablePhoto {
    int from = at;
    int length = next() << Byte.SIZE | next();
    int to = from + length;
    if (length < 2 || to > file.length) {
      throw new UnusablePhoto(BROKEN);
    }
    boolean keep = true;
    if (marker >= FIRST_APPLICATION && marker <= LAST_APPLICATION || marker == COMMENT) {
      keep = application(marker, to);
    } else if (isFrame(marker)) {
      frame(marker, length);
    }
    at = to;
    if (marker == SCAN) {
      scan();
    }
    if (keep) {
      kept.write(MARK);
      kept.write(marker);
      kept.write(file, from, at - from);
    }
  }

  /** Whether the decoder needs it; reads how the photo was held. */
  private boolean application(int marker, int to) {
    String name = new String(file, at, Math.min(6, to - at), ISO_8859_1);
    if (name.equals("Exif\0\0") && orientation == Orientation.UPRIGHT) {
      orientation = Orientation.inTiff(file, at + 6, to);
    }
    boolean ofColours =
        marker == FIRST_APPLICATION && name.startsWith("JFIF") || name.startsWith("Adobe");
    coloursKnown |= ofColours;
    return ofColours;
  }

  private static boolean isFrame(int marker) {
    boolean table = marker == 0xC4 || marker == 0xC8 || marker == 0xCC;
    return marker >= BASELINE && marker <= 0xCF && !table;
  }

  private void frame(int marker, int length) throws UnusablePhoto {
    if (width > 0 || marker > PROGRESSIVE || length < 8) {
      throw new UnusablePhoto(BROKEN); // several frames, lossless or arithmetic coding
    }
    next(); // precision
    height = next() << Byte.SIZE | next();
    width = next() << Byte.SIZE | next();
    PictureFile.mustBeBounded(width, height);
  }

  /** Moves behind the coded pixels: up to the next marker that is neither stuffed nor a restart. */
  private void scan() throws UnusablePhoto {
    scans++;
    if ((long) width * height * scans > MOST_PIXELS_IN_SCANS) {
      throw new UnusablePhoto(TOO_LARGE);
    }
    for (; at + 1 < file.length; at++) {
      int next = file[at + 1] & MARK;
      boolean inside = next == 0 || next >= FIRST_RESTART && next <= LAST_RESTART;
      if ((file[at] & MARK) == MARK && !inside) {
        return;
      }
    }
    throw new UnusablePhoto(BROKEN);
  }

  /**
   * Telephones append a second picture (CIPA DC-007, multi-picture format) or a short film. Nothing
   * of them is kept; anything else makes the file more than a photo.
   */
  private void mustEndHere() throws UnusablePhoto {
    int from = at;
    while (from < file.length && file[from] == 0) {
      from++;
    }
    boolean nothing = from == file.length;
    boolean picture =
        from + 2 < file.length && (file[from] & MARK) == MARK && (file[from + 1] & MARK) == START;
    boolean film = at + 8 <= file.length && new String(file, at + 4, 4, ISO_8859_1).equals("ftyp");
    if (!nothing && !picture && !film) {
      throw new UnusablePhoto(WITH_MORE);
    }
  }
}
