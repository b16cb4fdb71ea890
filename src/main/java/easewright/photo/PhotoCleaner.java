package easewright.photo;

import static easewright.photo.UnusablePhoto.Reason.BROKEN;

import easewright.deadline.Deadline;
import easewright.deadline.DeadlinePassed;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.RenderingHints;
import java.awt.geom.AffineTransform;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.ReentrantLock;
import javax.imageio.IIOImage;
import javax.imageio.ImageIO;
import javax.imageio.ImageReadParam;
import javax.imageio.ImageReader;
import javax.imageio.ImageWriteParam;
import javax.imageio.ImageWriter;
import javax.imageio.stream.MemoryCacheImageInputStream;
import javax.imageio.stream.MemoryCacheImageOutputStream;

/**
 * Decodes photos and writes them anew, so that places, names, thumbnails and whatever else a file
 * can hide do not survive. One at a time, since each takes some tens of megabytes.
 */
public final class PhotoCleaner {
  /** Longer side of a kept photo, pixels; enough to see a fold of 1 mm on a toile. */
  public static final int LARGE = 1600;

  /** Longer side of its small copy, pixels. */
  public static final int SMALL = 360;

  /** Largest file, bytes. */
  public static final int MOST_BYTES = 8 * 1024 * 1024;

  private static final float QUALITY = 0.82f;
  private static final Duration PATIENCE = Duration.ofSeconds(10);

  private final ReentrantLock turn = new ReentrantLock(true);

  /**
   * Writes a photo anew.
   *
   * @throws UnusablePhoto if it is no photo, or not within bounds
   * @throws DeadlinePassed if others kept it waiting too long
   */
  public CleanPhoto clean(byte[] file) throws UnusablePhoto {
    PictureFile picture = PictureFile.of(file);
    takeTurn();
    try {
      BufferedImage large = upright(picture, decoded(picture), LARGE);
      Deadline.check();
      BufferedImage small = drawn(large, new AffineTransform(), SMALL, false);
      return new CleanPhoto(jpeg(large), jpeg(small), large.getWidth(), large.getHeight());
    } catch (IOException | RuntimeException damaged) {
      // Decoders fail on damaged files in ways that their documentation does not tell.
      if (damaged instanceof DeadlinePassed passed) {
        throw passed;
      }
      throw new UnusablePhoto(BROKEN);
    } finally {
      turn.unlock();
    }
  }

  private void takeTurn() {
    try {
      long millis = Deadline.shareOfRest(PATIENCE).toMillis();
      if (!turn.tryLock(millis, TimeUnit.MILLISECONDS)) {
        throw new DeadlinePassed();
      }
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
      throw new DeadlinePassed();
    }
  }

  /** Decodes every n-th pixel, so that the result is less than twice as large as is kept. */
  private static BufferedImage decoded(PictureFile picture) throws IOException {
    int step = Math.max(1, Math.max(picture.width(), picture.height()) / LARGE);
    ImageReader reader = ImageIO.getImageReadersByFormatName(picture.format()).next();
    try (var bytes = new MemoryCacheImageInputStream(new ByteArrayInputStream(picture.bare()))) {
      reader.setInput(bytes, true, true);
      ImageReadParam read = reader.getDefaultReadParam();
      read.setSourceSubsampling(step, step, 0, 0);
      return reader.read(0, read);
    } finally {
      reader.dispose();
    }
  }

  private static BufferedImage upright(PictureFile picture, BufferedImage stored, int most) {
    int orientation = picture.orientation();
    return drawn(
        stored,
        Orientation.upright(orientation, stored.getWidth(), stored.getHeight()),
        most,
        Orientation.isLying(orientation));
  }

  /** Draws a picture on white, no larger than it is. */
  private static BufferedImage drawn(
      BufferedImage picture, AffineTransform upright, int most, boolean lying) {
    int width = lying ? picture.getHeight() : picture.getWidth();
    int height = lying ? picture.getWidth() : picture.getHeight();
    double scale = Math.min(1, (double) most / Math.max(width, height));
    int newWidth = (int) Math.max(1, Math.round(width * scale));
    int newHeight = (int) Math.max(1, Math.round(height * scale));
    BufferedImage made = new BufferedImage(newWidth, newHeight, BufferedImage.TYPE_INT_RGB);
    Graphics2D drawing = made.createGraphics();
    drawing.setColor(Color.WHITE);
    drawing.fillRect(0, 0, newWidth, newHeight);
    drawing.setRenderingHint(
        RenderingHints.KEY_INTERPOLATION, RenderingHints.VALUE_INTERPOLATION_BILINEAR);
    AffineTransform whole =
        AffineTransform.getScaleInstance((double) newWidth / width, (double) newHeight / height);
    whole.concatenate(upright);
    drawing.drawImage(picture, whole, null);
    drawing.dispose();
    return made;
  }

  private static byte[] jpeg(BufferedImage picture) throws IOException {
    ImageWriter writer = ImageIO.getImageWritersByFormatName("jpeg").next();
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    try (var stream = new MemoryCacheImageOutputStream(bytes)) {
      writer.setOutput(stream);
      ImageWriteParam write = writer.getDefaultWriteParam();
      write.setCompressionMode(ImageWriteParam.MODE_EXPLICIT);
      write.setCompressionQuality(QUALITY);
      writer.write(null, new IIOImage(picture, null, null), write);
    } finally {
      writer.dispose();
    }
    return bytes.toByteArray();
  }
}
