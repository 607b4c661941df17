package boundwright.store.backup;

import boundwright.quantity.RefusedException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipException;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.jspecify.annotations.Nullable;

/**
 * A backup that can leave the machine: one zip file with the database, what a coach put right in clips, what was learned from it and, if
 * that is wished, the films. Its last entry lists all others with their SHA-256, so that a file that was cut is told from a whole one.
 */
final class Bundle {
  static final String DATABASE = "boundwright.db";
  private static final String LIST = "list.txt";
  /** Where clips and films are, a folder of each in them. */
  static final List<String> FOLDERS = List.of("clips", "sessions");
  private static final String ALLOWED = "boundwright\\.db|(?:clips|sessions)(?:/[A-Za-z0-9_-][A-Za-z0-9._-]*)+";

  private Bundle() {}

  /**
   * Writes one.
   *
   * @param database a copy that was looked through
   * @param dataFolder where the films are
   * @param films whether films and their pictures go along
   * @param elsewhere films that are not in the data folder, or null
   * @return how many files are in it
   */
  static int write(OutputStream out, Path database, Path dataFolder, boolean films, @Nullable Elsewhere elsewhere) throws IOException {
    Map<String, Path> files = new TreeMap<>();
    for (String name : FOLDERS) {
      Path folder = dataFolder.resolve(name);
      if (Files.isDirectory(folder)) {
        try (Stream<Path> all = Files.walk(folder)) {
          all.filter(Files::isRegularFile).filter(f -> goesAlong(dataFolder.relativize(f), films)).forEach(f -> files.put(entry(dataFolder, f), f));
        }
      }
    }
    StringBuilder list = new StringBuilder("boundwright backup 1\nfilms " + (films ? "yes" : "no") + "\n");
    try (ZipOutputStream zip = new ZipOutputStream(out, StandardCharsets.UTF_8)) {
      zip.setLevel(Deflater.BEST_SPEED);
      list.append(add(zip, DATABASE, database));
      int written = 1;
      for (Map.Entry<String, Path> file : files.entrySet()) {
        if (Files.exists(file.getValue())) { // a clip may be taken back meanwhile
          list.append(add(zip, file.getKey(), file.getValue()));
          written++;
        }
      }
      if (films && elsewhere != null) {
        int[] more = {0};
        elsewhere.each(
            (name, file) -> {
              list.append(add(zip, name, file));
              more[0]++;
            });
        written += more[0];
      }
      zip.putNextEntry(new ZipEntry(LIST));
      zip.write(list.toString().getBytes(StandardCharsets.UTF_8));
      zip.closeEntry();
      return written;
    }
  }

  private static String entry(Path dataFolder, Path file) {
    return dataFolder.relativize(file).toString().replace('\\', '/');
  }

  /** The networks are fetched again; films and their pictures only if wished; what is only arriving never. */
  private static boolean goesAlong(Path inside, boolean films) {
    String name = String.valueOf(inside.getFileName());
    boolean fetched = inside.getNameCount() > 1 && inside.getName(1).toString().equals("weights");
    boolean film = name.startsWith("film.") || (inside.getNameCount() > 3 && inside.getName(2).toString().equals("stills"));
    return !fetched && !name.endsWith(".part") && (films || !film) && inside.toString().replace('\\', '/').matches(ALLOWED);
  }

  private static String add(ZipOutputStream zip, String name, Path file) throws IOException {
    ZipEntry entry = new ZipEntry(name);
    zip.putNextEntry(entry);
    MessageDigest digest = sha256();
    try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
      in.transferTo(zip);
    }
    zip.closeEntry();
    return HexFormat.of().formatHex(digest.digest()) + " " + name + "\n";
  }

  /**
   * Unpacks one into an empty folder.
   *
   * @return whether films go along
   * @throws RefusedException if it is no backup, is cut, or holds something else
   */
  static boolean read(InputStream in, Path into) throws IOException {
    Map<String, String> sums = new TreeMap<>();
    String list = "";
    try (ZipInputStream zip = new ZipInputStream(in, StandardCharsets.UTF_8)) {
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (e.getName().equals(LIST)) {
          list = new String(zip.readAllBytes(), StandardCharsets.UTF_8);
        } else if (e.getName().matches(ALLOWED) && !sums.containsKey(e.getName())) {
          sums.put(e.getName(), unpack(zip, into.resolve(e.getName())));
        } else {
          throw new RefusedException("The backup holds a file '" + e.getName().replaceAll("[^ -~]", "?") + "', which is none of boundwright's. Nothing was changed. Give a file that boundwright backup wrote.");
        }
      }
      in.transferTo(OutputStream.nullOutputStream()); // a sealed file is whole only when its last piece was opened
    } catch (ZipException | java.io.EOFException e) {
      throw cut(e);
    }
    StringBuilder found = new StringBuilder();
    sums.forEach((name, sum) -> found.append(sum).append(' ').append(name).append('\n'));
    List<String> lines = list.lines().toList();
    if (lines.size() < 3 || !lines.get(0).equals("boundwright backup 1")) {
      throw cut(new IOException("no list"));
    }
    if (!lines.subList(2, lines.size()).stream().sorted().toList().equals(found.toString().lines().sorted().toList())) {
      throw cut(new IOException("another sum"));
    }
    return lines.get(1).equals("films yes");
  }

  private static String unpack(InputStream in, Path file) throws IOException {
    Path folder = file.getParent();
    if (folder != null) {
      Private.folder(folder);
    }
    Private.file(file);
    MessageDigest digest = sha256();
    try (OutputStream out = new DigestOutputStream(Files.newOutputStream(file), digest)) {
      in.transferTo(out);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static RefusedException cut(IOException e) {
    return new RefusedException("The backup is cut or was changed, so nothing of it was taken and nothing here was changed. Take another copy of it.", e);
  }

  private static MessageDigest sha256() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
