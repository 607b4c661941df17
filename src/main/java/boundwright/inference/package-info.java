/**
 * The mathematics of believing that more than one room needs: the standard normal distribution and mixtures of it, a straight-line model that is
 * told one point at a time, and groups that share a straight-line part. Nothing here knows what the numbers are of.
 */
@NullMarked
package boundwright.inference;

import org.jspecify.annotations.NullMarked;
