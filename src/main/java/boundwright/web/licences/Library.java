package boundwright.web.licences;

import java.util.List;

/**
 * A library that ships.
 *
 * @param group who makes it, as the Maven repository names them
 * @param name of the library
 * @param version in use
 * @param licences the names of its licences; one of several may be chosen
 */
public record Library(String group, String name, String version, List<String> licences) {
  public Library {
    licences = List.copyOf(licences);
  }
}
