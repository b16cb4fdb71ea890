package easewright.photo;

import java.awt.geom.AffineTransform;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;

/**
 * How a camera was held (Exif 3.0, tag 274 "Orientation"): which edges of the picture the first row
 * and the first column of the stored one are.
 */
final class Orientation {
  static final int UPRIGHT = 1;

  private static final int LAST = 8;
  private static final int TAG = 274;
  private static final int SHORT = 3;
  private static final int ENTRY_BYTES = 12;
  private static final int MOST_ENTRIES = 200;

  private Orientation() {}

  /**
   * Reads it from TIFF data (TIFF 6.0, section 2); upright if it is not to be found there.
   *
   * @param from where the data begins
   * @param to where it ends
   */
  static int inTiff(byte[] file, int from, int to) {
    if (to - from < Long.BYTES) {
      return UPRIGHT;
    }
    ByteBuffer tiff = ByteBuffer.wrap(file, from, to - from).slice();
    tiff.order(tiff.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN);
    int directory = tiff.getInt(Integer.BYTES);
    if (directory < Long.BYTES || directory > tiff.limit() - Short.BYTES) {
      return UPRIGHT;
    }
    int entries = Math.min(MOST_ENTRIES, Short.toUnsignedInt(tiff.getShort(directory)));
    for (int i = 0; i < entries; i++) {
      int entry = directory + Short.BYTES + i * ENTRY_BYTES;
      if (entry + ENTRY_BYTES > tiff.limit()) {
        return UPRIGHT;
      }
      if (Short.toUnsignedInt(tiff.getShort(entry)) == TAG && tiff.getShort(entry + 2) == SHORT) {
        int value = Short.toUnsignedInt(tiff.getShort(entry + Long.BYTES));
        return value >= UPRIGHT && value <= LAST ? value : UPRIGHT;
      }
    }
    return UPRIGHT;
  }

  /** Whether width and height change places. */
  static boolean isLying(int orientation) {
    return orientation > 4;
  }

  /** Moves a picture of this stored size upright. */
  static AffineTransform upright(int orientation, double width, double height) {
    return switch (orientation) {
      case 2 -> new AffineTransform(-1, 0, 0, 1, width, 0);
      case 3 -> new AffineTransform(-1, 0, 0, -1, width, height);
      case 4 -> new AffineTransform(1, 0, 0, -1, 0, height);
      case 5 -> new AffineTransform(0, 1, 1, 0, 0, 0);
      case 6 -> new AffineTransform(0, 1, -1, 0, height, 0);
      case 7 -> new AffineTransform(0, -1, -1, 0, height, width);
      case LAST -> new AffineTransform(0, -1, 1, 0, 0, width);
      default -> new AffineTransform();
    };
  }
}
