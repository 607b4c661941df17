package boundwright.clip.keep;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.Stream;
import java.util.zip.Deflater;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;

/** Pictures that belong together as one zip file: a film has thousands, and a store asks a price for each object. */
final class Pack {
  private static final String NAME = "[A-Za-z0-9_-][A-Za-z0-9._-]*";

  private Pack() {}

  /** The files in a folder, by name. */
  static List<Path> files(Path folder) {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> all = Files.list(folder)) {
      return all.filter(Files::isRegularFile).sorted().toList();
    } catch (IOException e) {
      throw new UncheckedIOException("pictures could not be listed", e);
    }
  }

  /** Writes these files into one; pictures are small already, so nothing is made smaller. */
  static void write(List<Path> files, Path to) {
    try (OutputStream out = Files.newOutputStream(to);
        ZipOutputStream zip = new ZipOutputStream(out)) {
      zip.setLevel(Deflater.NO_COMPRESSION);
      for (Path file : files) {
        zip.putNextEntry(new ZipEntry(String.valueOf(file.getFileName())));
        Files.copy(file, zip);
        zip.closeEntry();
      }
    } catch (IOException e) {
      throw new UncheckedIOException("pictures could not be packed", e);
    }
  }

  /** Unpacks those whose names are wished for; a name that is no picture's is left out. */
  static void read(Path pack, Path into, Predicate<String> wished) {
    try (InputStream in = Files.newInputStream(pack);
        ZipInputStream zip = new ZipInputStream(in)) {
      Files.createDirectories(into);
      for (ZipEntry e = zip.getNextEntry(); e != null; e = zip.getNextEntry()) {
        if (e.getName().matches(NAME) && wished.test(e.getName())) {
          Files.copy(zip, into.resolve(e.getName()), StandardCopyOption.REPLACE_EXISTING);
        }
      }
    } catch (IOException e) {
      throw new UncheckedIOException("pictures could not be unpacked", e);
    }
  }
}
