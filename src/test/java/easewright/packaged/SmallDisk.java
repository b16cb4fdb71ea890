package easewright.packaged;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * A folder that soon has no room left: a file system of 3 MB in memory where the tests are root,
 * else a bound on the size of any file the service writes. Either is there; nothing is skipped.
 */
final class SmallDisk implements AutoCloseable {
  private static final int BALLAST_BYTES = 2_000_000;
  private static final int FILE_BYTES = 1_000_000;

  private final Path folder;
  private final Path ballast;
  private final boolean mounted;

  private SmallDisk(Path folder, boolean mounted) {
    this.folder = folder;
    this.mounted = mounted;
    ballast = folder.resolve("ballast");
  }

  static SmallDisk at(Path folder) throws IOException, InterruptedException {
    Files.createDirectories(folder);
    boolean mounted = run("mount", "-t", "tmpfs", "-o", "size=3m", "none", folder.toString()) == 0;
    SmallDisk disk = new SmallDisk(folder, mounted);
    if (mounted) {
      Files.write(disk.ballast, new byte[BALLAST_BYTES]);
    }
    System.out.println(mounted ? "A disk of 3 MB" : "No disk can be mounted; files are bounded");
    return disk;
  }

  /** Begins to bound a running service. */
  void limit(PackagedService service) throws IOException, InterruptedException {
    if (!mounted) {
      bound(service, FILE_BYTES + ":unlimited");
    }
  }

  private static void bound(PackagedService service, String bytes)
      throws IOException, InterruptedException {
    if (run("prlimit", "--pid", "" + service.pid(), "--fsize=" + bytes) != 0) {
      throw new IllegalStateException("prlimit is needed (util-linux)");
    }
  }

  void makeRoom(PackagedService service) throws IOException, InterruptedException {
    if (mounted) {
      Files.delete(ballast);
    } else {
      bound(service, "unlimited:unlimited");
    }
  }

  private static int run(String... command) throws IOException, InterruptedException {
    return new ProcessBuilder(command)
        .redirectErrorStream(true)
        .redirectOutput(ProcessBuilder.Redirect.DISCARD)
        .start()
        .waitFor();
  }

  @Override
  public void close() throws IOException, InterruptedException {
    if (mounted) {
      run("umount", "-l", folder.toString());
    }
  }
}
