package easewright.photo;

import static easewright.photo.TestPictures.chunk;
import static easewright.photo.TestPictures.deflatedZeros;
import static easewright.photo.TestPictures.drawn;
import static easewright.photo.TestPictures.join;
import static easewright.photo.TestPictures.jpeg;
import static easewright.photo.TestPictures.jpegWithPlace;
import static easewright.photo.TestPictures.png;
import static easewright.photo.TestPictures.segment;
import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import easewright.photo.UnusablePhoto.Reason;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What remains of a photo, and what is refused (OWASP File Upload Cheat Sheet: decide by content,
 * bound the size, write images anew). Positions of tags are those of Exif 3.0 and TIFF 6.0, markers
 * those of ITU-T T.81, chunks those of the W3C's PNG specification.
 */
class PhotoCleanerTest {
  private final PhotoCleaner cleaner = new PhotoCleaner();

  private static BufferedImage read(byte[] file) throws IOException {
    return ImageIO.read(new ByteArrayInputStream(file));
  }

  private static String text(byte[] file) {
    return new String(file, ISO_8859_1);
  }

  private void assertRefused(Reason reason, byte[] file) {
    assertTimeoutPreemptively(
        Duration.ofSeconds(10),
        () ->
            assertEquals(
                reason, assertThrows(UnusablePhoto.class, () -> cleaner.clean(file)).reason()));
  }

  @Test
  void place_time_and_words_of_a_photo_do_not_survive() throws Exception {
    byte[] sent = jpegWithPlace(640, 480, 1);
    assertTrue(text(sent).contains("Exif") && text(sent).contains("Quillmere House"));

    CleanPhoto photo = cleaner.clean(sent);

    for (byte[] kept : List.of(photo.large(), photo.small())) {
      for (String trace : List.of("Exif", "Quillmere", "GPS", "ICC_PROFILE", "http")) {
        assertFalse(text(kept).contains(trace), trace);
      }
      assertEquals(Map.of(0xE0, 1), applicationSegments(kept), "only the JFIF header");
    }
    assertEquals(640, read(photo.large()).getWidth());
    assertEquals(PhotoCleaner.SMALL, read(photo.small()).getWidth());
  }

  /** How many segments of each kind only describe the picture; walked as T.81, B.1.1.4 says. */
  private static Map<Integer, Integer> applicationSegments(byte[] file) {
    Map<Integer, Integer> found = new TreeMap<>();
    int at = 2;
    while ((file[at + 1] & 0xFF) != 0xDA) {
      int marker = file[at + 1] & 0xFF;
      if (marker >= 0xE0 && marker <= 0xEF || marker == 0xFE) {
        found.merge(marker, 1, Integer::sum);
      }
      at += 2 + ((file[at + 2] & 0xFF) << 8 | file[at + 3] & 0xFF);
    }
    return found;
  }

  /** The stored picture is red on the left; Exif 3.0, tag 274, says where its first row belongs. */
  @ParameterizedTest
  @CsvSource({
    "1, left",
    "2, right",
    "3, right",
    "4, left",
    "5, top",
    "6, top",
    "7, bottom",
    "8, bottom"
  })
  void a_photo_is_turned_as_the_camera_was_held(int orientation, String red) throws Exception {
    BufferedImage upright = read(cleaner.clean(jpegWithPlace(120, 80, orientation)).large());

    boolean lying = orientation > 4;
    assertEquals(lying ? 80 : 120, upright.getWidth());
    int width = upright.getWidth();
    int height = upright.getHeight();
    int pixel =
        switch (red) {
          case "left" -> upright.getRGB(10, height / 2);
          case "right" -> upright.getRGB(width - 10, height / 2);
          case "top" -> upright.getRGB(width / 2, 10);
          default -> upright.getRGB(width / 2, height - 10);
        };
    assertTrue((pixel >> 16 & 0xFF) > 200 && (pixel & 0xFF) < 60, Integer.toHexString(pixel));
  }

  @Test
  void a_large_photo_is_made_smaller_and_a_small_one_stays() throws Exception {
    CleanPhoto large = cleaner.clean(jpeg(4000, 3000));
    assertEquals(1600, large.width());
    assertEquals(1200, large.height());
    assertEquals(1600, read(large.large()).getWidth());
    CleanPhoto small = cleaner.clean(png(60, 90));
    assertEquals(60, small.width());
    assertEquals(90, read(small.small()).getHeight());
  }

  @Test
  void what_is_see_through_becomes_white() throws Exception {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    ImageIO.write(new BufferedImage(20, 20, BufferedImage.TYPE_INT_ARGB), "png", bytes);
    int pixel = read(cleaner.clean(bytes.toByteArray()).large()).getRGB(5, 5);
    assertEquals(0xFF, pixel & 0xFF);
  }

  @Test
  void what_is_no_photo_is_refused_whatever_it_is_called() {
    for (String file :
        List.of(
            "<svg xmlns=\"http://www.w3.org/2000/svg\"><script>alert(1)</script></svg>",
            "GIF89a\1\0\1\0\0\0\0;",
            "RIFF\44\0\0\0WEBPVP8 ",
            "<html><img src=x onerror=alert(1)>",
            "%PDF-1.7",
            "BM",
            "x")) {
      assertRefused(Reason.OF_NO_KIND, file.getBytes(ISO_8859_1));
    }
    assertRefused(Reason.OF_NO_KIND, join("<script>/*".getBytes(ISO_8859_1), jpeg(40, 30)));
  }

  @Test
  void a_file_that_is_a_photo_and_something_else_is_refused() {
    for (String other : List.of("PK\3\4archive", "%PDF-1.7", "<script>alert(1)</script>", "x")) {
      assertRefused(Reason.WITH_MORE, join(jpeg(40, 30), other.getBytes(ISO_8859_1)));
      assertRefused(Reason.WITH_MORE, join(png(40, 30), other.getBytes(ISO_8859_1)));
    }
  }

  /** CIPA DC-007 lets a second picture follow; telephones do so with nearly every photo. */
  @Test
  void what_telephones_append_is_dropped() throws Exception {
    byte[] photo = cleaner.clean(join(jpeg(40, 30), jpegWithPlace(20, 10, 1))).large();
    assertEquals(40, read(photo).getWidth());
    assertFalse(text(photo).contains("Quillmere"));
    byte[] film = "\0\0\0\30ftypmp42 a film".getBytes(ISO_8859_1);
    assertFalse(text(cleaner.clean(join(jpeg(40, 30), film)).large()).contains("film"));
  }

  @Test
  void a_size_beyond_bounds_is_refused_by_the_header_alone() {
    assertRefused(Reason.TOO_LARGE, png(50_000, 50_000, 100));
    assertRefused(Reason.TOO_LARGE, png(Integer.MAX_VALUE, 1, 100));
    assertRefused(Reason.TOO_LARGE, png(6000, 5000, 100));
    assertRefused(Reason.BROKEN, png(-1, 5, 100));
    byte[] jpeg = jpeg(40, 30);
    int frame = text(jpeg).indexOf("\u00ff\u00c0");
    jpeg[frame + 5] = (byte) 0xFF;
    jpeg[frame + 7] = (byte) 0xFF;
    assertRefused(Reason.TOO_LARGE, jpeg);
  }

  /** 400 MB of zeros in 400 KB: as pixels, as a text, and as a profile of colours. */
  @Test
  void a_decompression_bomb_is_not_unpacked() throws Exception {
    byte[] zeros = deflatedZeros(400_000_000L);
    assertTrue(zeros.length < 1_000_000);
    byte[] profile = chunk("iCCP", join("p\0\0".getBytes(ISO_8859_1), zeros));
    byte[] words = chunk("zTXt", join("p\0\0".getBytes(ISO_8859_1), zeros));
    long before = Runtime.getRuntime().totalMemory();
    CleanPhoto photo = cleaner.clean(png(50, 50, 400_000_000L, profile, words));
    assertEquals(50, photo.width());
    assertTrue(photo.large().length < 5000);
    assertTrue(Runtime.getRuntime().totalMemory() - before < 300_000_000L);
  }

  @Test
  void a_photo_of_endless_scans_is_refused_before_it_is_decoded() throws Exception {
    byte[] progressive = progressive(3000, 2000);
    assertEquals(1600, cleaner.clean(progressive).width(), "an honest one is not");
    int last = text(progressive).lastIndexOf("\u00ff\u00da");
    byte[] scan = java.util.Arrays.copyOfRange(progressive, last, progressive.length - 2);
    byte[] all = java.util.Arrays.copyOf(progressive, last);
    List<byte[]> parts = new ArrayList<>(List.of(all));
    for (int i = 0; i < 200; i++) {
      parts.add(scan);
    }
    parts.add(new byte[] {(byte) 0xFF, (byte) 0xD9});
    assertRefused(Reason.TOO_LARGE, join(parts.toArray(byte[][]::new)));
  }

  private static byte[] progressive(int width, int height) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (var stream = ImageIO.createImageOutputStream(bytes)) {
      writer.setOutput(stream);
      ImageWriteParam write = writer.getDefaultWriteParam();
      write.setProgressiveMode(ImageWriteParam.MODE_DEFAULT);
      writer.write(null, new IIOImage(drawn(width, height), null, null), write);
    }
    return bytes.toByteArray();
  }

  /** Whatever is sent, there is a photo or a reason; nothing else is thrown. */
  @Test
  void a_damaged_file_is_refused() throws Exception {
    Random random = new Random(7);
    int refused = 0;
    for (byte[] whole : List.of(jpegWithPlace(80, 60, 6), png(80, 60), progressive(80, 60))) {
      for (int i = 0; i < 400; i++) {
        byte[] damaged = whole.clone();
        for (int change = 0; change <= i % 4; change++) {
          damaged[random.nextInt(damaged.length)] = (byte) random.nextInt();
        }
        if (i % 5 == 0) {
          damaged = java.util.Arrays.copyOf(damaged, random.nextInt(damaged.length));
        }
        try {
          assertTrue(cleaner.clean(damaged).large().length > 100);
        } catch (UnusablePhoto one) {
          refused++;
        }
      }
    }
    assertTrue(refused > 200, "refused " + refused);
    assertRefused(Reason.BROKEN, join(new byte[] {-1, -40}, segment(0xE1, new byte[9])));
  }
}
