import {
  type KyselyPlugin,
  OperationNodeTransformer,
  type PrimitiveValueListNode,
  type RootOperationNode,
  type ValueNode,
} from 'kysely';

/**
 * PostgreSQL's text holds every character but U+0000, which JSON may bring: it is replaced by U+FFFD, so that whoever
 * sends it is answered as for any other text that nobody knows.
 */
export const WITHOUT_NUL: KyselyPlugin = {
  transformQuery: ({ node }) => new Replacing().transformNode(node) as RootOperationNode,
  transformResult: async ({ result }) => result,
};

class Replacing extends OperationNodeTransformer {
  protected override transformValue(node: ValueNode): ValueNode {
    return { ...super.transformValue(node), value: replaced(node.value) };
  }

  protected override transformPrimitiveValueList(node: PrimitiveValueListNode): PrimitiveValueListNode {
    return { ...super.transformPrimitiveValueList(node), values: node.values.map(replaced) };
  }
}

/** A value as PostgreSQL keeps it. */
export function replaced<Value>(value: Value): Value | string {
  return typeof value === 'string' ? value.replaceAll('\u0000', '\ufffd') : value;
}
