package easewright.photo;

import static easewright.photo.UnusablePhoto.Reason.BROKEN;
import static easewright.photo.UnusablePhoto.Reason.WITH_MORE;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Set;

/** The chunks of a PNG file (W3C, Portable Network Graphics, third edition, section 5). */
final class PngChunks {
  private static final byte[] SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};

  /** Texts and colour profiles are compressed without bound, so they never reach the decoder. */
  private static final Set<String> NEEDED = Set.of("IHDR", "PLTE", "tRNS", "IDAT", "IEND");

  private static final int HEADER_BYTES = 13;
  private static final int AROUND = 12; // length, type and checksum

  private PngChunks() {}

  static boolean begin(byte[] file) {
    return file.length > SIGNATURE.length
        && ByteBuffer.wrap(file, 0, SIGNATURE.length).equals(ByteBuffer.wrap(SIGNATURE));
  }

  static PictureFile read(byte[] file) throws UnusablePhoto {
    ByteArrayOutputStream bare = new ByteArrayOutputStream(file.length);
    bare.writeBytes(SIGNATURE);
    ByteBuffer rest = ByteBuffer.wrap(file).position(SIGNATURE.length);
    int width = 0;
    int height = 0;
    int orientation = Orientation.UPRIGHT;
    String type = "";
    while (!type.equals("IEND")) {
      int from = rest.position();
      int length = rest.remaining() < AROUND ? -1 : rest.getInt();
      if (length < 0 || length > rest.remaining() - (AROUND - Integer.BYTES)) {
        throw new UnusablePhoto(BROKEN);
      }
      type = new String(file, rest.position(), Integer.BYTES, StandardCharsets.ISO_8859_1);
      int data = rest.position() + Integer.BYTES;
      boolean header = type.equals("IHDR");
      if (header != (width == 0) || header && length != HEADER_BYTES) {
        throw new UnusablePhoto(BROKEN); // the header comes first, and once
      }
      if (header) {
        width = rest.getInt(data);
        height = rest.getInt(data + Integer.BYTES);
        PictureFile.mustBeBounded(width, height);
      } else if (type.equals("eXIf")) {
        orientation = Orientation.inTiff(file, data, data + length);
      }
      rest.position(from + AROUND + length);
      if (NEEDED.contains(type)) {
        bare.write(file, from, AROUND + length);
      }
    }
    if (rest.hasRemaining()) {
      throw new UnusablePhoto(WITH_MORE);
    }
    return new PictureFile("png", width, height, orientation, bare.toByteArray());
  }
}
