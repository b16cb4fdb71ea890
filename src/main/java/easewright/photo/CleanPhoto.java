package easewright.photo;

/**
 * A photo written anew as JPEG, upright and without metadata.
 *
 * @param large at most {@value PhotoCleaner#LARGE} pixels on its longer side
 * @param small the same for a list, at most {@value PhotoCleaner#SMALL} pixels
 * @param width of the large one, pixels
 * @param height of the large one, pixels
 */
public record CleanPhoto(byte[] large, byte[] small, int width, int height) {}
