/**
 * What catalogues, archives and search engines read: the report as a Dataset of schema.org, as an RO-Crate and as a
 * citation. The document goes in, texts of JSON-LD and YAML come out. Start with
 * {@link io.burnlaw.report.catalogue.DatasetFacts}.
 */
@org.jspecify.annotations.NullMarked
package io.burnlaw.report.catalogue;
