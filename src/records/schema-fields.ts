/** Which fields a schema knows at a place in a record, for "did you mean". */
import { z } from 'zod';

/** The schemas that can stand one step further in: a field, an entry of a list, a branch. */
function inside(schema: z.core.$ZodType, step: PropertyKey): z.core.$ZodType[] {
  return unwrapped(schema).flatMap((bare): z.core.$ZodType[] => {
    if (bare instanceof z.ZodObject) {
      const shape: Record<string, z.core.$ZodType> = bare.shape;
      return Object.hasOwn(shape, step) ? [shape[String(step)]] : [];
    }
    if (bare instanceof z.ZodArray) return [bare.element];
    if (bare instanceof z.ZodTuple) return [...(bare.def.items as z.core.$ZodType[])];
    if (bare instanceof z.ZodRecord) return [bare.valueType];
    return [];
  });
}

/** The schema without "optional", "default" and the like; the branches of a union. */
function unwrapped(schema: z.core.$ZodType): z.core.$ZodType[] {
  if (schema instanceof z.ZodOptional || schema instanceof z.ZodDefault) {
    return unwrapped(schema.def.innerType);
  }
  if (schema instanceof z.ZodNullable) return unwrapped(schema.def.innerType);
  if (schema instanceof z.ZodPipe) return unwrapped(schema.def.in);
  if (schema instanceof z.ZodUnion) return schema.options.flatMap((option) => unwrapped(option));
  return [schema];
}

/** Names of the fields that may stand in the group at this path; none when it is no group. */
export function knownFields(schema: z.core.$ZodType, path: readonly PropertyKey[]): string[] {
  const there = path.reduce<z.core.$ZodType[]>(
    (schemas, step) => schemas.flatMap((one) => inside(one, step)),
    [schema],
  );
  const groups = there.flatMap(unwrapped).filter((bare) => bare instanceof z.ZodObject);
  return [...new Set(groups.flatMap((group) => Object.keys(group.shape)))];
}
