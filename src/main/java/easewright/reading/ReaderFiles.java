package easewright.reading;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where a model, its vocabulary and its numbers lie. */
interface ReaderFiles {
  /**
   * Opens a file.
   *
   * @throws IOException when it is missing or cannot be read
   */
  InputStream open(String name) throws IOException;

  /** A small file as a whole. */
  default byte[] read(String name) throws IOException {
    try (InputStream file = open(name)) {
      return file.readAllBytes();
    }
  }

  /** Those in the application's jar, beside this package. */
  static ReaderFiles shipped() {
    return name -> {
      InputStream file = ReaderFiles.class.getResourceAsStream(name);
      if (file == null) {
        throw new FileNotFoundException(name + " is not part of this application");
      }
      return file;
    };
  }

  /** Those of a folder. */
  static ReaderFiles in(Path folder) {
    return name -> Files.newInputStream(folder.resolve(name));
  }
}
