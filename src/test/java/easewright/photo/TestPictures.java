package easewright.photo;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.zip.CRC32;
import java.util.zip.DeflaterOutputStream;
import javax.imageio.ImageIO;

/** Makes picture files for tests. */
public final class TestPictures {
  private TestPictures() {}

  /** A picture whose left half is red and whose right half is blue. */
  static BufferedImage drawn(int width, int height) {
    BufferedImage picture = new BufferedImage(width, height, BufferedImage.TYPE_INT_RGB);
    Graphics2D drawing = picture.createGraphics();
    drawing.setColor(Color.RED);
    drawing.fillRect(0, 0, width / 2, height);
    drawing.setColor(Color.BLUE);
    drawing.fillRect(width / 2, 0, width - width / 2, height);
    drawing.dispose();
    return picture;
  }

  private static byte[] written(int width, int height, String format) {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      ImageIO.write(drawn(width, height), format, bytes);
      return bytes.toByteArray();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** A JPEG of a picture as {@link #drawn} makes it. */
  public static byte[] jpeg(int width, int height) {
    return written(width, height, "jpeg");
  }

  /** The same as PNG. */
  public static byte[] png(int width, int height) {
    return written(width, height, "png");
  }

  /** The same as the service keeps it. */
  public static CleanPhoto clean(int width, int height) {
    try {
      return new PhotoCleaner().clean(jpeg(width, height));
    } catch (UnusablePhoto impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  /**
   * A JPEG as a telephone writes it: with the place it was taken at, how it was held and a
   * description (Exif 3.0: tag 274 orientation, 270 description, 34853 the GPS directory with
   * latitude, 1 to 4).
   */
  public static byte[] jpegWithPlace(int width, int height, int orientation) {
    byte[] words = "Taken at Quillmere House\0".getBytes(StandardCharsets.US_ASCII);
    ByteBuffer tiff = ByteBuffer.allocate(400).order(ByteOrder.LITTLE_ENDIAN);
    tiff.put((byte) 'I').put((byte) 'I').putShort((short) 42).putInt(8);
    tiff.putShort((short) 3);
    entry(tiff, 270, 2, words.length, 200);
    entry(tiff, 274, 3, 1, orientation);
    entry(tiff, 34853, 4, 1, 60);
    tiff.putInt(0);
    tiff.position(60).putShort((short) 2);
    entry(tiff, 1, 2, 2, 'N');
    entry(tiff, 2, 5, 3, 120);
    tiff.putInt(0);
    tiff.position(120);
    for (int part : new int[] {51, 1, 28, 1, 40, 1}) {
      tiff.putInt(part);
    }
    tiff.position(200).put(words);
    byte[] exif = join("Exif\0\0".getBytes(StandardCharsets.US_ASCII), tiff.array());
    byte[] comment = "GPS 51.4778 N".getBytes(StandardCharsets.US_ASCII);
    byte[] plain = jpeg(width, height);
    return join(
        new byte[] {(byte) 0xFF, (byte) 0xD8},
        segment(0xE1, exif),
        segment(0xFE, comment),
        java.util.Arrays.copyOfRange(plain, 2, plain.length));
  }

  private static void entry(ByteBuffer tiff, int tag, int type, int count, int value) {
    tiff.putShort((short) tag).putShort((short) type).putInt(count).putInt(value);
  }

  /** A segment of a JPEG. */
  static byte[] segment(int marker, byte[] data) {
    int length = data.length + 2;
    return join(new byte[] {(byte) 0xFF, (byte) marker, (byte) (length >> 8), (byte) length}, data);
  }

  /** A PNG of one's own making: header as told, and pixels that inflate to some zero bytes. */
  static byte[] png(int width, int height, long zeros, byte[]... more) {
    ByteBuffer header = ByteBuffer.allocate(13).putInt(width).putInt(height);
    header.put((byte) 8).put((byte) 2);
    byte[] all =
        join(
            new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'},
            chunk("IHDR", header.array()));
    for (byte[] one : more) {
      all = join(all, one);
    }
    return join(all, chunk("IDAT", deflatedZeros(zeros)), chunk("IEND", new byte[0]));
  }

  /** Zero bytes, compressed about a thousandfold. */
  static byte[] deflatedZeros(long count) {
    try {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      try (DeflaterOutputStream deflated = new DeflaterOutputStream(bytes)) {
        byte[] zeros = new byte[1 << 16];
        for (long left = count; left > 0; left -= zeros.length) {
          deflated.write(zeros, 0, (int) Math.min(left, zeros.length));
        }
      }
      return bytes.toByteArray();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }

  /** A chunk of a PNG. */
  static byte[] chunk(String type, byte[] data) {
    byte[] named = join(type.getBytes(StandardCharsets.US_ASCII), data);
    CRC32 sum = new CRC32();
    sum.update(named);
    return join(
        ByteBuffer.allocate(4).putInt(data.length).array(),
        named,
        ByteBuffer.allocate(4).putInt((int) sum.getValue()).array());
  }

  /** Several arrays, one after another. */
  static byte[] join(byte[]... parts) {
    ByteArrayOutputStream all = new ByteArrayOutputStream();
    for (byte[] part : parts) {
      all.writeBytes(part);
    }
    return all.toByteArray();
  }
}
