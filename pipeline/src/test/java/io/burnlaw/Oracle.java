package io.burnlaw;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Stands on a test whose expected values come from outside the project; docs/validation.md lists them.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target({ElementType.METHOD, ElementType.TYPE})
public @interface Oracle {

    /** {@return where the expected values come from} */
    String value();

    /** {@return how closely they agree, in words, such as {@code relative 1e-8}} */
    String agreement() default "";

    /** {@return whether the source was only remembered, so that the check is a soft one} */
    boolean fromMemory() default false;
}
