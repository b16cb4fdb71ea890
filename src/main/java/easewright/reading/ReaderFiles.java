package easewright.reading;

import java.io.FileNotFoundException;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;

/** Where a model, its vocabulary and its numbers lie. */
interface ReaderFiles {
  /**
   * A file as a whole.
   *
   * @throws IOException when it is missing or cannot be read
   */
  byte[] read(String name) throws IOException;

  /** Those in the application's jar, beside this package. */
  static ReaderFiles shipped() {
    return name -> {
      try (InputStream file = ReaderFiles.class.getResourceAsStream(name)) {
        if (file == null) {
          throw new FileNotFoundException(name + " is not part of this application");
        }
        return file.readAllBytes();
      }
    };
  }

  /** Those of a folder. */
  static ReaderFiles in(Path folder) {
    return name -> Files.readAllBytes(folder.resolve(name));
  }
}
