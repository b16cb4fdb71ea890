package easewright.photo;

/**
 * What a decoder needs of a file.
 *
 * @param format the name by which the decoder is found
 * @param width as stored, before turning it upright
 * @param height as stored
 * @param orientation 1 to 8, see {@link Orientation}
 * @param bare the file without anything that only describes the picture
 */
record PictureFile(String format, int width, int height, int orientation, byte[] bare) {
  /** A phone's photo of 24 megapixels with a little to spare. */
  private static final long MOST_PIXELS = 25_000_000;

  private static final int LONGEST_SIDE = 12_000;

  /**
   * Recognises a file by its content; names and media types are only claims.
   *
   * @throws UnusablePhoto if it is none that can be decoded within bounds
   */
  static PictureFile of(byte[] file) throws UnusablePhoto {
    if (JpegSegments.begin(file)) {
      return JpegSegments.read(file);
    }
    if (PngChunks.begin(file)) {
      return PngChunks.read(file);
    }
    throw new UnusablePhoto(UnusablePhoto.Reason.OF_NO_KIND);
  }

  /** Rejects a size by the header alone, before anything is decoded. */
  static void mustBeBounded(long width, long height) throws UnusablePhoto {
    if (width < 1 || height < 1) {
      throw new UnusablePhoto(UnusablePhoto.Reason.BROKEN);
    }
    if (width > LONGEST_SIDE || height > LONGEST_SIDE || width * height > MOST_PIXELS) {
      throw new UnusablePhoto(UnusablePhoto.Reason.TOO_LARGE);
    }
  }
}
