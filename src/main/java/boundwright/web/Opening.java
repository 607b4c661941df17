package boundwright.web;

import boundwright.web.department.DepartmentSetting;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;

/**
 * How the pages are to be opened.
 *
 * @param host address to listen on, {@code 127.0.0.1} unless the coach says otherwise; {@code all} for every one
 * @param port 1 to 65535, or 0 for any that is free
 * @param https whether phones are answered over https, on the port after this one
 * @param name what {@code NAME.local} is to be; empty for no such name
 * @param behind what browsers open if a proxy that speaks https stands before, {@code https://NAME}; empty for none
 * @param keys folder of the certificate's keys; made if it is missing, looked at only with https
 * @param department how the department is known whose logins are taken; null for none
 */
public record Opening(String host, int port, boolean https, String name, Path keys, String behind, @Nullable DepartmentSetting department) {}
