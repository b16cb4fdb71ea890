package easewright.clinic;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/**
 * Keeps other processes from the store's file by an operating-system lock on a second file, which
 * is released if the process is killed. That file also records that there was once a store.
 */
final class FileHold {
  private static final byte[] MARK =
      "Beside this there is a store of clinics. A running service locks this file.\n"
          .getBytes(StandardCharsets.US_ASCII);

  private final Path beside;
  private FileChannel channel;
  private FileLock lock;

  FileHold(Path beside) {
    this.beside = beside;
  }

  /** Whether there was once a store. */
  boolean isMarked() {
    return beside.toFile().length() > 0;
  }

  /** Records that there is a store from now on. */
  void mark() throws IOException {
    if (!isMarked()) {
      channel.write(ByteBuffer.wrap(MARK), 0);
      channel.force(true);
    }
  }

  /** Acquires the lock until it is released; returns whether it is held. May be called again. */
  synchronized boolean take() throws IOException {
    if (lock != null && Files.exists(beside)) {
      return true;
    }
    release();
    channel = FileChannel.open(beside, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
    try {
      lock = channel.tryLock();
    } catch (OverlappingFileLockException another) {
      lock = null; // held by another store in this process
    }
    if (lock == null) {
      channel.close();
      channel = null;
    }
    return lock != null;
  }

  synchronized void release() {
    try {
      if (channel != null) {
        channel.close();
      }
    } catch (IOException gone) {
      // The lock ends with the process in any case.
    } finally {
      channel = null;
      lock = null;
    }
  }
}
